import { dateInWords, dateOfDay, daysPerYear } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import {
  chargeFrame,
  dailyCharge,
  engineDaysFrame,
  figure,
  narrowWidth,
  percent,
  temperatureText,
  wideWidth,
} from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { HourColumns, YearView } from '../engine/year-view.js';
import { chargeLines, engineLines } from './charge-lines.js';
import { DayHours, type OfDay } from './day-hours.js';
import { useNarrow } from './drawn-chart.js';
import { Fortnight } from './fortnight.js';
import { FramedChart } from './framed-chart.js';

/** Left and right of the charts' days, in their units. */
const marginLeft = 50;
const marginRight = 8;

/** The bank and the engine through the year, and the day that is pointed at. */
export function Charge({ view, units }: { view: YearView; units: UnitSystem }): VNode {
  const { hours, floor, summary, worst } = view;
  const narrow = useNarrow();
  const days = useMemo(() => dailyCharge(hours), [hours]);
  // Whole hours, so that the scale does not move with every move.
  const engineTop = Math.ceil(Math.max(1, ...days.engineH));
  const [day, setDay] = useState(() => lowestDay(hours, summary.bank.minStateOfCharge));
  const [fortnight, setFortnight] = useState(false);
  const width = narrow ? narrowWidth : wideWidth;
  const span = width - marginLeft - marginRight;
  const point = (event: PointerEvent) => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const pointed = ((event.clientX - box.left) / box.width) * width - marginLeft;
    setDay(Math.min(daysPerYear - 1, Math.max(0, Math.floor((pointed / span) * daysPerYear))));
  };
  const across = (days: number) => ((marginLeft + (days / daysPerYear) * span) / width) * 100;
  // Over the end of the year it stands in two pieces.
  const pieces = [worst.firstDay, worst.firstDay - daysPerYear]
    .map((from) => [Math.max(0, from), Math.min(daysPerYear, from + worst.days.length)] as const)
    .filter(([from, to]) => to > from);
  return (
    <section aria-labelledby="charge-head">
      <h2 id="charge-head">The bank through the year</h2>
      <div class="pointed" onPointerMove={point} onPointerDown={point}>
        <FramedChart
          frame={() => chargeFrame(floor, narrow)}
          frameOf={[floor, narrow]}
          lines={chargeLines(days.lowest, days.noon, narrow)}
          of={[days]}
        />
        {summary.generator.hours > 0 && (
          <FramedChart
            frame={() => engineDaysFrame(engineTop, narrow)}
            frameOf={[engineTop, narrow]}
            lines={engineLines(days.engineH, narrow)}
            of={[days]}
          />
        )}
        {fortnight &&
          pieces.map(([from, to]) => (
            <div key={from} class="band" style={{ left: `${across(from)}%`, width: `${across(to) - across(from)}%` }} />
          ))}
        <div class="hair" style={{ left: `${across(day + 0.5)}%` }} />
      </div>
      <p class="caption">
        Line: lowest of each day; dots: at noon{summary.generator.hours > 0 && '; below: hours of engine'}. Point at a
        day to open it.
      </p>
      <div class="day-choice">
        <label for="day">Day</label>
        <input
          type="range"
          id="day"
          min={0}
          max={daysPerYear - 1}
          step={1}
          value={day}
          aria-valuetext={dateInWords(day)}
          onInput={(event) => setDay(Number(event.currentTarget.value))}
        />
        <button type="button" onClick={() => setDay(lowestDay(hours, summary.bank.minStateOfCharge))}>
          Lowest charge
        </button>
        <button type="button" aria-expanded={fortnight} onClick={() => setFortnight(!fortnight)}>
          Dullest fortnight
        </button>
      </div>
      {fortnight && <Fortnight spell={worst} units={units} />}
      <Day hours={hours} day={day} floor={floor} units={units} narrow={narrow} />
    </section>
  );
}

function lowestDay({ lowestStateOfCharge }: HourColumns, lowest: number): number {
  return Math.max(0, Math.floor(lowestStateOfCharge.indexOf(lowest) / 24));
}

function Day({ hours, day, floor, units, narrow }: OfDay): VNode {
  const from = day * 24;
  const part = (column: Float64Array) => column.subarray(from, from + 24);
  const kWh = (...columns: Float64Array[]) =>
    columns.reduce((sum, column) => sum + part(column).reduce((inDay, wh) => inDay + wh, 0), 0) / 1000;
  const engineH = part(hours.generatorH).reduce((sum, h) => sum + h, 0);
  return (
    <div class="day" data-day={dateOfDay(day)}>
      <h3>{dateInWords(day)}</h3>
      <dl class="day-facts">
        <Fact name="Sun used">{figure(kWh(hours.arrayUsedWh))} kWh</Fact>
        <Fact name="Thrown away">{figure(kWh(hours.throttledWh))} kWh</Fact>
        <Fact name="Load">{figure(kWh(hours.acServedWh, hours.dcServedWh, hours.darkWh))} kWh</Fact>
        <Fact name="Engine">{figure(engineH)} h</Fact>
        <Fact name="Lowest charge">{percent(Math.min(...part(hours.lowestStateOfCharge)))}</Fact>
        <Fact name="Bank at coldest">{temperatureText(Math.min(...part(hours.bankC)), units)}</Fact>
      </dl>
      <DayHours hours={hours} day={day} floor={floor} units={units} narrow={narrow} />
    </div>
  );
}

const Fact = ({ name, children }: { name: string; children: (string | number)[] | string }): VNode => (
  <div>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);
