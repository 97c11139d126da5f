import { arrayLosses, type YearResult } from '@wintergap/year';
import { figure, percent } from '../../words/figures.js';
import type { Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** Where the light on the arrays goes, from the sky to the bus, kWh in the year, all arrays together. */
export interface LossChain {
  /** Rated power x light on the plane. */
  startKWh: number;
  /** In the order in which they bite; negative where something is gained. */
  losses: { name: string; kWh: number }[];
  /** What sun gave to load and bank: start less all losses. */
  usedKWh: number;
}

/** The chain of losses over all arrays of a design; `null` when it has none. */
export function lossChain(result: YearResult): LossChain | null {
  const chains = arrayLosses(result).map(({ chain }) => chain);
  const first = chains[0];
  if (!first) return null;
  const total = (values: readonly Float64Array[]) =>
    values.reduce((sum, months) => sum + months.reduce((year, kWh) => year + kWh, 0), 0);
  return {
    startKWh: total(chains.map(({ startKWh }) => startKWh)),
    losses: first.losses.map(({ name }, i) => ({ name, kWh: total(chains.map(({ losses }) => losses[i]!.kWh)) })),
    usedKWh: total(chains.map(({ restKWh }) => restKWh)),
  };
}

export function lossTable({ startKWh, losses, usedKWh }: LossChain): Markup {
  const share = (kWh: number) => percent(Math.abs(kWh) / (startKWh || 1), 1);
  let left = startKWh;
  const rows = losses
    .filter(({ kWh }) => Math.abs(kWh) >= 0.05)
    .map(({ name, kWh }) => {
      left -= kWh;
      return [
        kWh < 0 ? `${name} (a gain)` : name,
        `${sign(-kWh)}${figure(Math.abs(kWh))}`,
        `${sign(-kWh)}${share(kWh)}`,
        figure(left, 0),
      ];
    });
  return figuresTable(
    'From the light on the array to the bus, in the year',
    [
      { head: 'Step' },
      { head: 'Change', unit: 'kWh' },
      { head: 'Of the start', unit: '' },
      { head: 'Left', unit: 'kWh' },
    ],
    [
      ['rated power × light on the plane', '', '100 %', figure(startKWh, 0)],
      ...rows,
      ['used', '', share(usedKWh), figure(usedKWh, 0)],
    ],
    true,
  );
}

const sign = (kWh: number) => (kWh > 0 ? '+' : '−');
