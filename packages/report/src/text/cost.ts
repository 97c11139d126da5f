import type { DesignCost } from '@wintergap/seasonal';
import { figure, wrap } from '../figures.js';
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
export function costText(designs: readonly NamedCost[], years: number | null): string {
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
  ]);
  const missing = [...new Set(designs.flatMap(({ cost }) => cost.missing))];
  const span = years === null ? 'life cycle' : `${years} years`;
  return [
    'Cost of array, bank, engine and fuel, in the prices of the site file',
    plainTable(['', 'to buy', 'to run', 'all', span, 'against'], [['', '', 'a year', 'a year', '', 'base'], ...rows]),
    ...(missing.length > 0 ? [wrap(`Not in it, for want of ${missing.join(', ')}.`)] : []),
  ].join('\n');
}

const money = (value: number | null) => (value === null ? '-' : figure(value, 0));
const signedMoney = (value: number) => `${value < 0 ? '-' : '+'}${figure(Math.abs(value), 0)}`;
