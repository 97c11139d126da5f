import type { YearResult } from '@wintergap/year';
import { energyChart } from '../../chart/energy.js';
import { monthlyEnergy } from '../../chart/monthly-energy.js';
import { figure, percent } from '../../words/figures.js';
import { chartFigure } from '../sheet/figure.js';
import { section } from '../sheet/frame.js';
import type { Markup } from '../sheet/markup.js';

/** What sun and engine gave by month, what was thrown away, and what the loads asked for. */
export function energySection({ ledger, summary, plant }: YearResult): Markup {
  const { array, load } = summary;
  const energy = monthlyEnergy(ledger);
  const engineKWh = energy.engine.reduce((sum, kWh) => sum + kWh, 0);
  const hasEngine = plant.generator !== null;
  const engineText = hasEngine
    ? ` The engine gave ${figure(engineKWh)} kWh, ${percent(engineKWh / (array.usedKWh + engineKWh || 1))} of what came in.`
    : '';
  const givers = hasEngine ? 'sun and engine' : 'the sun';
  return section(
    'energy',
    'Where does the energy come from, and how much is thrown away?',
    chartFigure({
      id: 'energy-chart',
      chart: (narrow) => energyChart(energy, narrow),
      key: [
        { text: 'sun, used', mark: { kind: 'fill', fill: 'var(--used)' } },
        ...(hasEngine ? [{ text: 'engine', mark: { kind: 'fill', fill: 'url(#engine-dots)' } } as const] : []),
        { text: 'sun, thrown away', mark: { kind: 'fill', fill: 'url(#thrown-hatch)' } },
        { text: 'load', mark: { kind: 'line', stroke: 'var(--ink)' } },
      ],
      caption: `The array offered ${figure(array.availableKWh)} kWh; ${figure(array.usedKWh)} kWh were used.${engineText} The loads asked for ${figure(load.servedKWh + load.darkKWh)} kWh; what ${givers} gave above that was lost in bank and inverter. The figures stand in “Month by month”.`,
    }),
  );
}
