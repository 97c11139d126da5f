import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { monthNames } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { figure, percent, wrap } from './figures.js';
import { lowestByMonth } from './lowest-by-month.js';
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
    planeMonths(designs),
  ].join('\n\n');
}

function compareHeadline(designs: readonly NamedYear[], units: UnitSystem): string {
  const base = designs[0]!;
  const hours = ({ result }: NamedYear) => result.summary.generator.hours;
  const best = designs.reduce((least, design) => (hours(design) < hours(least) ? design : least));
  const dark = (design: NamedYear) => design.result.summary.load.darkKWh;
  const name = base.result.site.name;
  if (designs.length === 1) return `${name}: the site file has no variants to compare.`;
  if (designs.every((design) => hours(design) === 0)) {
    const lightest = designs.reduce((least, design) => (dark(design) < dark(least) ? design : least));
    return wrap(
      `${name}: no design runs an engine; "${lightest.name}" leaves the least load dark, ${figure(dark(lightest))} kWh.`,
    );
  }
  if (best === base)
    return wrap(`${name}: none of the variants runs the engine less than the base, ${figure(hours(base))} h.`);
  const fuel = base.result.summary.generator.fuelLitres - best.result.summary.generator.fuelLitres;
  return wrap(
    `${name}: "${best.name}" runs the engine least, ${figure(hours(best))} h: ${figure(hours(base) - hours(best))} h and ${formatQuantity(fuel, 'volume', units)} of fuel less than the base.`,
  );
}

function totalsTable(designs: readonly NamedYear[], units: UnitSystem): string {
  const base = designs[0]!.result.summary;
  const volume = units === 'us' ? 'gal' : 'L';
  const inVolume = (litres: number) => (units === 'us' ? litres / 3.785411784 : litres);
  const rows = designs.map(({ name, result: { summary, ledger } }, i) => [
    name,
    figure(summary.generator.hours),
    i === 0 ? '' : signed(summary.generator.hours - base.generator.hours),
    figure(summary.generator.starts, 0),
    figure(inVolume(summary.generator.fuelLitres)),
    i === 0 ? '' : signed(inVolume(summary.generator.fuelLitres - base.generator.fuelLitres)),
    figure(summary.throttle.kWh),
    figure(summary.load.darkKWh),
    percent(lowestByMonth(ledger.lowestStateOfCharge)[11]!),
    figure(summary.bank.autonomyDays),
  ]);
  return plainTable(
    ['', 'engine', 'against', 'starts', 'fuel', 'against', 'thrown', 'dark', 'December', 'autonomy'],
    [['', 'h', 'base', '', volume, 'base', 'kWh', 'kWh', 'lowest', 'days'], ...rows],
  );
}

function engineMonths(designs: readonly NamedYear[]): string {
  const rows = designs.map(({ name, result }) => [
    name,
    ...result.summary.generator.months.map(({ hours }) => (hours === 0 ? '-' : figure(hours, 0))),
  ]);
  return `Engine hours by month\n${plainTable(['', ...monthNames], rows)}`;
}

function planeMonths(designs: readonly NamedYear[]): string {
  const rows = designs.map(({ name, result }) => [
    name,
    ...result.summary.array.months.map(({ availableKWh }) => figure(availableKWh, 0)),
  ]);
  return `Array energy offered by month, kWh\n${plainTable(['', ...monthNames], rows)}`;
}

const signed = (value: number) => (Math.abs(value) < 0.05 ? '0' : `${value > 0 ? '+' : '-'}${figure(Math.abs(value))}`);
