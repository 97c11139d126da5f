import { figure, inVolumeUnit, percent, throttlingWhen, volumeUnit } from '@wintergap/report/in-page';
import type { ComponentChildren, VNode } from 'preact';
import type { OfPage } from './session.js';
import { type Figured, Shown } from './shown.js';

/** The few figures that go with the answer. */
export function Facts({ session, state }: OfPage): VNode {
  const { units, weather } = session.handOver;
  const isMade = 'months' in weather;
  const { summary } = state.view;
  const { generator, throttle, array, bank, load } = summary;
  const own = state.present?.figures;
  const cost = state.present?.cost;
  return (
    <dl class="facts">
      {state.view.design.generator && (
        <>
          <Fact
            name={isMade ? 'Year made of means' : "Weather file's year"}
            id="own-hours"
            value={generator.hours}
            unit="h"
          >
            {figure(generator.starts, 0)} {generator.starts === 1 ? 'start' : 'starts'}
          </Fact>
          <Fact
            name="Fuel"
            id="fuel"
            value={inVolumeUnit(own?.fuelLitres.mean ?? generator.fuelLitres, units)}
            unit={volumeUnit(units)}
          >
            {own ? 'a year, mean' : isMade ? 'in the year made of means' : "in the file's year"}
          </Fact>
        </>
      )}
      <Fact name="Thrown away" id="thrown" value={throttle.kWh} unit="kWh">
        {percent(throttle.kWh / (array.availableKWh || 1))} of what was offered
      </Fact>
      <div class="fact wide">
        <dt>Throttling</dt>
        <dd id="season">{throttle.firstDate === null && throttle.kWh < 0.5 ? 'never' : throttlingWhen(throttle)}</dd>
      </div>
      <Fact name="Lowest charge" id="lowest" value={bank.minStateOfCharge * 100} unit="%">
        {figure(bank.autonomyDays)} days autonomy
      </Fact>
      <Fact name="Load left dark" id="dark" value={load.darkKWh} unit="kWh" />
      {cost?.perYear != null && (
        <Fact name="Cost a year" id="cost" value={cost.perYear} unit="">
          {cost.firstCost === null ? '' : `${figure(cost.firstCost, 0)} to buy`}
        </Fact>
      )}
    </dl>
  );
}

function Fact({ name, id, value, unit, children }: Figured & { children?: ComponentChildren }): VNode {
  return (
    <div class="fact">
      <dt>{name}</dt>
      <dd>
        <Shown id={id} value={value} {...(unit === '' || unit === '%' ? { digits: 0 } : {})} />
        <span class="unit"> {unit}</span>
        {children !== undefined && <small>{children}</small>}
      </dd>
    </div>
  );
}
