import { figure, hoursDifferenceInWords, inVolumeUnit, volumeUnit } from '@wintergap/report/in-page';
import type { CommonFigures } from '@wintergap/study';
import type { VNode } from 'preact';
import { Keep } from './keep.js';
import { Scroll } from './scroll.js';
import { baseName, type OfPage, presentName } from './session.js';

/** Set-ups side by side over the same years, and what is kept of them. */
export function Comparison({ session, state }: OfPage): VNode {
  const { units, variants } = session.handOver;
  const { pins, years, against } = state;
  const rows = session.rows;
  const figuresOf = (row: string): CommonFigures | null =>
    years?.rows.includes(row) === true ? (years.answer.common.designs.find((one) => one.name === row) ?? null) : null;
  const costOf = (row: string) => years?.answer.costs?.find((one) => one.name === row)?.cost.perYear ?? null;
  const priced = rows.some((row) => costOf(row.name) !== null);
  const dark = years?.answer.common.merit === 'darkKWh';
  const unpinned = Object.keys(variants).filter((variant) => !pins.some((pin) => pin.name === variant));
  return (
    <section aria-labelledby="pins-head">
      <h2 id="pins-head">Side by side</h2>
      <Scroll label="Set-ups side by side">
        <table class="pins">
          <thead>
            <tr>
              <th scope="col">Set-up</th>
              <th scope="col">
                Usual year <span class="unit">{dark ? 'kWh dark' : 'h'}</span>
              </th>
              <th scope="col">
                One in ten <span class="unit">{dark ? 'kWh or more' : 'h or more'}</span>
              </th>
              <th scope="col">
                Fuel, mean <span class="unit">{volumeUnit(units)}</span>
              </th>
              {priced && (
                <th scope="col">
                  Cost <span class="unit">a year</span>
                </th>
              )}
              <th scope="col">
                Against {against} <span class="unit">90 % sure</span>
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => {
              const own = figuresOf(row.name);
              const merit = dark ? own?.ranked.darkKWh : own?.ranked.generatorHours;
              const isPresent = row.name === presentName || row.name === session.presentPin;
              const cost = costOf(row.name);
              return (
                <tr key={row.name} class={isPresent ? 'present' : ''} data-set-up={row.name}>
                  <th scope="row">
                    {row.name}
                    {isPresent && row.name !== presentName && <small> shown now</small>}
                  </th>
                  <Cell value={merit?.usual.value} />
                  <Cell value={merit?.oneInTen.value} />
                  <Cell value={own ? inVolumeUnit(own.fuelLitres.mean, units) : undefined} />
                  {priced && <td>{cost === null ? '–' : figure(cost, 0)}</td>}
                  <td class="words">{differenceOf(own, dark)}</td>
                  <td class="deeds">
                    {!isPresent && (
                      <button type="button" onClick={() => session.take(row.change)}>
                        Show<span class="heard"> {row.name}</span>
                      </button>
                    )}
                    {row.name !== against && row.name !== presentName && (
                      <button type="button" onClick={() => session.holdAgainst(row.name)}>
                        Hold against<span class="heard"> {row.name}</span>
                      </button>
                    )}
                    {row.name !== baseName && row.name !== presentName && (
                      <button type="button" onClick={() => session.unpin(row.name)}>
                        Unpin<span class="heard"> {row.name}</span>
                      </button>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
      <div class="deeds-row">
        <Keep session={session} state={state} />
        {unpinned.length > 0 && (
          <div class="pin">
            <label for="variant">Variant of the site file</label>
            <select
              id="variant"
              value=""
              onChange={(event) => {
                if (event.currentTarget.value !== '') void session.pinVariant(event.currentTarget.value, false);
              }}
            >
              <option value="">pin one …</option>
              {unpinned.map((variant) => (
                <option key={variant} value={variant}>
                  {variant}
                </option>
              ))}
            </select>
          </div>
        )}
      </div>
    </section>
  );
}

const Cell = ({ value }: { value: number | undefined }): VNode =>
  value === undefined ? (
    <td>…</td>
  ) : (
    <td>
      <data value={String(value)}>{figure(value)}</data>
    </td>
  );

function differenceOf(own: CommonFigures | null, dark: boolean): string {
  if (own?.againstBase == null) return '';
  return dark ? darkDifference(own.againstBase.darkKWh.mean) : hoursDifferenceInWords(own.againstBase.generatorHours);
}

const darkDifference = (kWh: number): string =>
  Math.abs(kWh) < 0.05 ? 'no difference' : `${figure(Math.abs(kWh))} kWh ${kWh < 0 ? 'less' : 'more'} dark`;
