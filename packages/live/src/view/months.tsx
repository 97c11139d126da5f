import { energyChart, monthBarsChart } from '@wintergap/report/in-page';
import type { VNode } from 'preact';
import { DrawnChart } from './drawn-chart.js';
import { Key } from './key.js';
import type { PageState } from './session.js';

/** Engine hours by month, and what sun and engine gave. */
export function Months({ state }: { state: PageState }): VNode {
  const { summary, energy } = state.view;
  const hours = summary.generator.months.map((month) => month.hours);
  const base = state.pins[0]!.view.summary.generator.months.map((month) => month.hours);
  const differs = Object.keys(state.change).length > 0;
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
              of={[state.view, differs]}
            />
          </figure>
        )}
        <figure class="energy">
          <figcaption>
            Energy, kWh
            <Key />
          </figcaption>
          <DrawnChart chart={() => energyChart(energy, true)} of={[energy]} />
        </figure>
      </div>
    </section>
  );
}
