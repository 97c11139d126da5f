import type { UnitSystem } from '@wintergap/quantity';
import { percent, temperatureText } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { HourColumns } from '../engine/year-view.js';
import { dayChargeChart, dayEnergyChart, dayHours } from './day-chart.js';
import { DrawnChart } from './drawn-chart.js';
import { Scroll } from './scroll.js';

/** A day of the year's hours, and how it is shown. */
export interface OfDay {
  hours: HourColumns;
  day: number;
  floor: number;
  units: UnitSystem;
  narrow: boolean;
}

/** The 24 hours of a day, drawn and as figures. */
export function DayHours({ hours, day, floor, units, narrow }: OfDay): VNode {
  const rows = useMemo(() => dayHours(hours, day), [hours, day]);
  const fine = (kWh: number) => (kWh === 0 ? '–' : kWh.toFixed(2));
  return (
    <>
      <DrawnChart chart={() => dayEnergyChart(rows, narrow)} of={[rows, narrow]} />
      <DrawnChart chart={() => dayChargeChart(rows, floor, narrow)} of={[rows, floor, narrow]} />
      <details>
        <summary>The figures of this day</summary>
        <Scroll label="Hours of the day">
          <table>
            <thead>
              <tr>
                {['Hour', 'Sun used kWh', 'Thrown away kWh', 'Engine kWh', 'Load kWh', 'Charge', 'Bank'].map((head) => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ hour, sun, thrown, engine, load, charge, bankC }) => (
                <tr key={hour}>
                  <th scope="row">{String(hour).padStart(2, '0')}</th>
                  <td>{fine(sun)}</td>
                  <td>{fine(thrown)}</td>
                  <td>{fine(engine)}</td>
                  <td>{fine(load)}</td>
                  <td>{percent(charge)}</td>
                  <td>{temperatureText(bankC, units)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </>
  );
}
