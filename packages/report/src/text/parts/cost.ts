import type { UnitSystem } from '@wintergap/quantity';
import type { DesignCost } from '@wintergap/seasonal';
import { figure, wrap } from '../../words/figures.js';
import { temperatureDifferenceText, temperatureText } from '../../words/shown-units.js';
import { plainTable } from './plain-table.js';

/** A design and what it costs to buy and to run. */
export interface NamedCost {
  name: string;
  cost: DesignCost;
}

/**
 * What each design costs, and against the base; empty where the site file has no prices. Nothing is made up: a figure
 * that hangs on a missing price is a dash, and the missing keys are named.
 */
export function costText(designs: readonly NamedCost[], years: number | null, units: UnitSystem = 'metric'): string {
  const known = designs.some(({ cost }) => cost.firstCost !== null || cost.runningPerYear !== null);
  if (!known) return '';
  const base = designs[0]!.cost.lifeCycle;
  const rows = designs.map(({ name, cost }, i) => [
    name,
    money(cost.firstCost),
    money(cost.runningPerYear),
    money(cost.perYear),
    money(cost.lifeCycle?.total ?? null),
    i > 0 && base && cost.lifeCycle ? signedMoney(cost.lifeCycle.total - base.total) : '',
    figure(cost.bankYears, 1),
  ]);
  const missing = [...new Set(designs.flatMap(({ cost }) => cost.missing))];
  const span = years === null ? 'life cycle' : `${years} years`;
  return [
    'Cost of array, bank, engine and fuel, in the prices of the site file',
    plainTable(
      ['', 'to buy', 'to run', 'all', span, 'against', 'bank'],
      [['', '', 'a year', 'a year', '', 'base', 'years'], ...rows],
    ),
    ...bankLifeText(designs, units),
    ...(missing.length > 0 ? [wrap(`Not in it, for want of ${missing.join(', ')}.`)] : []),
  ].join('\n');
}

/** Lives nearer to the base's than this share need no word. */
const likeLife = 0.05;

/** Why a design may cost more than its engine saves: the same bank is bought again sooner, or later. */
function bankLifeText([base, ...others]: readonly NamedCost[], units: UnitSystem): string[] {
  const baseYears = base!.cost.bankYears;
  const apart = others.filter(({ cost }) => Math.abs(cost.bankYears / baseYears - 1) > likeLife);
  if (apart.length === 0) return [];
  const lives = apart.map(({ name, cost }) => `${figure(cost.bankYears, 1)} years in "${name}"`);
  return [
    wrap(
      `The bank lasts ${figure(baseYears, 1)} years in ${base!.name}, ${lives.join(', ')}: what shortens its life is bought again sooner. Cells age twice as fast for each ${temperatureDifferenceText(10, units)} above ${temperatureText(25, units)}, and with deep cycles.`,
    ),
  ];
}

const money = (value: number | null) => (value === null ? '-' : figure(value, 0));
const signedMoney = (value: number) => `${value < 0 ? '-' : '+'}${figure(Math.abs(value), 0)}`;
