import { energyChart, monthBarsChart } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import type { YearView } from '../engine/year-view.js';
import { DrawnChart } from './drawn-chart.js';
import { Key } from './key.js';

/**
 * Engine hours by month, and what sun and engine gave.
 *
 * @param differs whether the design is another than the site file's
 */
export function Months({ view, file, differs }: { view: YearView; file: YearView; differs: boolean }): VNode {
  const { summary, energy } = view;
  const hours = summary.generator.months.map((month) => month.hours);
  const base = file.summary.generator.months.map((month) => month.hours);
  return (
    <section aria-labelledby="months-head">
      <h2 id="months-head">Month by month</h2>
      <div class="pair">
        {(summary.generator.hours > 0 || Math.max(...base) > 0) && (
          <figure>
            <figcaption>Engine, hours{differs && <>; bars across: the site file</>}</figcaption>
            <DrawnChart
              chart={() =>
                monthBarsChart({
                  label: 'Engine hours of each month in the year of the weather file.',
                  unit: 'h',
                  values: hours,
                  ...(differs && { base }),
                  top: Math.max(1, ...hours, ...base),
                  fill: 'url(#engine-dots)',
                  stroke: 'var(--engine)',
                })
              }
              of={[view, differs]}
            />
          </figure>
        )}
        <figure class="energy">
          <figcaption>
            Energy, kWh
            <Key hasEngine={view.design.generator !== undefined} />
          </figcaption>
          <DrawnChart chart={() => energyChart(energy, true)} of={[energy]} />
        </figure>
      </div>
    </section>
  );
}
