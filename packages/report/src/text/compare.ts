import { monthInWords, monthNames } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { engineTimes, longestDaysBetween } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { figure, percent, wrap } from '../figures.js';
import { lowestByMonth } from '../lowest-by-month.js';
import { inVolumeUnit, volumeUnit } from '../shown-units.js';
import { plainTable } from './plain-table.js';

/** A design and its year; the first of a list is the base that the others are held against. */
export interface NamedYear {
  name: string;
  result: YearResult;
}

/** Designs side by side, 80 columns, answer first. */
export function compareText(designs: readonly NamedYear[], units: UnitSystem): string {
  return [
    compareHeadline(designs, units),
    totalsTable(designs, units),
    engineMonths(designs),
    engineTimesTable(designs),
    arrayMonths(designs),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

export function compareHeadline(designs: readonly NamedYear[], units: UnitSystem): string {
  const base = designs[0]!;
  const hours = ({ result }: NamedYear) => result.summary.generator.hours;
  const dark = (design: NamedYear) => design.result.summary.load.darkKWh;
  // A design that saves engine hours by leaving load dark is no better.
  const asBright = designs.filter((design) => dark(design) <= dark(base) + 0.5);
  const best = asBright.reduce((least, design) => (hours(design) < hours(least) ? design : least));
  const name = base.result.site.name;
  if (designs.length === 1) return `${name}: the site file has no variants to compare.`;
  if (designs.every((design) => hours(design) === 0)) {
    const lightest = designs.reduce((least, design) => (dark(design) < dark(least) ? design : least));
    return wrap(
      `${name}: no design runs an engine; "${lightest.name}" leaves the least load dark, ${figure(dark(lightest))} kWh.`,
    );
  }
  if (best === base)
    return wrap(
      `${name}: no variant runs the engine less than the base, ${figure(hours(base))} h, without leaving more load dark.`,
    );
  const fuel = base.result.summary.generator.fuelLitres - best.result.summary.generator.fuelLitres;
  return wrap(
    `${name}: "${best.name}" runs the engine least, ${figure(hours(best))} h: ${figure(hours(base) - hours(best))} h and ${formatQuantity(fuel, 'volume', units)} of fuel less than the base.`,
  );
}

function totalsTable(designs: readonly NamedYear[], units: UnitSystem): string {
  const base = designs[0]!.result.summary;
  const darkMonth = base.darkSeason.month;
  const rows = designs.map(({ name, result: { summary, ledger } }, i) => [
    name,
    figure(summary.generator.hours),
    i === 0 ? '' : signed(summary.generator.hours - base.generator.hours),
    figure(summary.generator.starts, 0),
    figure(inVolumeUnit(summary.generator.fuelLitres, units)),
    figure(summary.throttle.kWh),
    figure(summary.load.darkKWh),
    percent(lowestByMonth(ledger.lowestStateOfCharge)[darkMonth - 1]!),
  ]);
  return plainTable(
    ['', 'engine', 'against', 'starts', 'fuel', 'thrown', 'dark', monthInWords(darkMonth)],
    [['', 'h', 'base', '', volumeUnit(units), 'kWh', 'kWh', 'lowest'], ...rows],
  );
}

function engineMonths(designs: readonly NamedYear[]): string {
  const rows = designs.map(({ name, result }) => [
    name,
    ...result.summary.generator.months.map(({ hours }) => (hours === 0 ? '-' : figure(hours, 0))),
  ]);
  return monthsTable('Engine hours by month', rows);
}

const dayParts = [0, 4, 8, 12, 16, 20];

/** When of the day the engine runs, and how long it rests between runs. */
function engineTimesTable(designs: readonly NamedYear[]): string {
  const rows = designs.map(({ name, result }) => {
    const times = engineTimes(result.ledger.generatorH);
    const cells = dayParts.map((from) => {
      const hours = times.reduce((sum, row) => sum + row.slice(from, from + 4).reduce((part, h) => part + h, 0), 0);
      return hours === 0 ? '-' : figure(hours, 0);
    });
    const rest = longestDaysBetween(result.ledger.generatorH);
    return [shortName(name), ...cells, rest === null ? '-' : figure(rest, 0)];
  });
  const head = ['', ...dayParts.map((from) => `${from}-${from + 4}`), 'rest'];
  return `Engine hours by hours of day, and the longest rest, days\n${plainTable(head, rows)}`;
}

/** Nothing when the variants leave the array as it is. */
function arrayMonths([base, ...variants]: readonly NamedYear[]): string {
  const months = ({ result }: NamedYear) => result.summary.array.months.map(({ availableKWh }) => availableKWh);
  const ofBase = months(base!);
  const more = variants.map((design) => months(design).map((kWh, m) => signedWhole(kWh - ofBase[m]!)));
  if (more.length > 0 && more.flat().every((cell) => cell === '-')) return '';
  return monthsTable('Array energy offered by month, kWh: the base, then what each variant brings more or less', [
    [base!.name, ...ofBase.map((kWh) => figure(kWh, 0))],
    ...variants.map(({ name }, i) => [name, ...more[i]!]),
  ]);
}

/** Twelve columns beside names of at most 18 characters fit the page up to thousands. */
function monthsTable(title: string, rows: readonly (readonly string[])[]): string {
  const short = rows.map(([name = '', ...cells]) => [shortName(name), ...cells]);
  return `${wrap(title)}\n${plainTable(['', ...monthNames], short, 1)}`;
}

const shortName = (name: string) => (name.length > 18 ? `${name.slice(0, 17)}.` : name);

const signedWhole = (value: number) =>
  Math.abs(value) < 0.5 ? '-' : `${value > 0 ? '+' : '-'}${figure(Math.abs(value), 0)}`;

const signed = (value: number) => (Math.abs(value) < 0.05 ? '0' : `${value > 0 ? '+' : '-'}${figure(Math.abs(value))}`);
