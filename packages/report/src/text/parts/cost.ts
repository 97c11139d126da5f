import type { UnitSystem } from '@wintergap/quantity';
import type { UnpricedThing } from '@wintergap/seasonal';
import type { ComparedCost } from '@wintergap/study';
import { figure, wrap } from '../../words/figures.js';
import { type Currency, costAgainstInWords, moneyUnit } from '../../words/money.js';
import { temperatureDifferenceText, temperatureText } from '../../words/shown-units.js';
import { plainTable } from './plain-table.js';

/** Terms of a comparison of costs. */
export interface CostTerms {
  /** Its length; `null` where the site file has none. */
  years: number | null;
  currency: Currency;
}

/** Whether there is anything to say of the costs of designs. */
export const costsKnown = (designs: readonly ComparedCost[]): boolean =>
  designs.some(({ cost, againstBase }) => againstBase || cost.firstCost !== null || cost.runningPerYear !== null);

/**
 * What each design costs, and against the base; empty where the site file has no prices. Nothing is made up: a figure
 * that hangs on a missing price is a dash, and what has no price is named.
 */
export function costText(designs: readonly ComparedCost[], terms: CostTerms, units: UnitSystem = 'metric'): string {
  if (!costsKnown(designs)) return '';
  const { years, currency } = terms;
  const span = years === null ? 'life cycle' : `${years} years`;
  return [
    wrap(`Cost of all that has a price in the site file, with fuel, service and replacements, ${moneyUnit(currency)}`),
    plainTable(
      ['', 'to buy', 'to run', 'all', span, 'against base', 'bank'],
      [['', '', 'a year', 'a year', '', '+/- 90 % sure', 'years'], ...costRows(designs)],
    ),
    ...costSentences(designs, terms, units).map((sentence) => wrap(sentence)),
  ].join('\n');
}

/**
 * Each design's row: name, to buy, to run and all a year, present value, that against the base, years of the bank. A plus
 * stands where something without a price comes to it that others have not.
 */
export function costRows(designs: readonly ComparedCost[]): string[][] {
  const inAll = ({ name, thing }: UnpricedThing) =>
    designs.every(({ cost }) => cost.unpriced.some((other) => other.name === name && other.thing === thing));
  return designs.map(({ name, cost, againstBase }) => {
    const more = !cost.unpriced.every(inAll);
    const money = (value: number | null) => (value === null ? '-' : `${figure(value, 0)}${more ? ' +' : ''}`);
    return [
      name,
      money(cost.firstCost),
      cost.runningPerYear === null ? '-' : figure(cost.runningPerYear, 0),
      money(cost.perYear),
      money(cost.lifeCycle?.total ?? null),
      againstCell(cost.lifeCycle === null ? null : againstBase),
      figure(cost.bankYears, 1),
    ];
  });
}

/** The sentences below the figures: differences, what they leave out, and lives. */
export function costSentences(
  designs: readonly ComparedCost[],
  { years, currency }: CostTerms,
  units: UnitSystem,
): string[] {
  const [base] = designs;
  const against = designs.flatMap(({ name, againstBase }) =>
    againstBase && years !== null ? [costAgainstInWords(`"${name}"`, base!.name, againstBase, years, currency)] : [],
  );
  const missing = [...new Set(designs.flatMap(({ cost }) => cost.missing))];
  const told = new Set(['array', 'bank', 'engine']);
  const unpriced = designs.flatMap(({ cost }) => cost.unpriced).filter(({ part }) => !told.has(part));
  const apart = designs.some(
    ({ againstBase }) => againstBase && againstBase.here.length + againstBase.there.length > 0,
  );
  const names = [...new Set(unpriced.map(({ name }) => name))];
  return [
    ...against,
    ...bankLife(designs, units),
    ...(missing.length > 0 ? [`Not in it, for want of ${missing.join(', ')}.`] : []),
    ...(names.length > 0
      ? [
          `Not in it, because it has no price: ${names.join(', ')}.${apart ? ' A + stands for what comes to a sum and not to all of them.' : ''}`,
        ]
      : []),
  ];
}

function againstCell(against: ComparedCost['againstBase']): string {
  if (!against || against.here.length + against.there.length > 0) return '';
  const { mean, low, high } = against.difference;
  const reach = low === null || high === null ? '' : ` +/- ${figure((high - low) / 2, 0)}`;
  return `${signedMoney(mean)}${reach}`;
}

/** Lives nearer to the base's than this share need no word. */
const likeLife = 0.05;

/** Why a design may cost more than its engine saves: the same bank is bought again sooner, or later. */
function bankLife([base, ...others]: readonly ComparedCost[], units: UnitSystem): string[] {
  const baseYears = base!.cost.bankYears;
  const apart = others.filter(({ cost }) => Math.abs(cost.bankYears / baseYears - 1) > likeLife);
  if (apart.length === 0) return [];
  const lives = apart.map(({ name, cost }) => `${figure(cost.bankYears, 1)} years in "${name}"`);
  return [
    `The bank lasts ${figure(baseYears, 1)} years in ${base!.name}, ${lives.join(', ')}: what shortens its life is bought again sooner. Cells age twice as fast for each ${temperatureDifferenceText(10, units)} above ${temperatureText(25, units)}, and with deep cycles.`,
  ];
}

const signedMoney = (value: number) => `${value < 0 ? '-' : '+'}${figure(Math.abs(value), 0)}`;
