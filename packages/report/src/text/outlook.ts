import { monthNames } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { Outlook, QuantileRange, Ranked, RankedFigure, YearFigures } from '@wintergap/study';
import { count, figure, percent, wrap } from '../words/figures.js';
import { inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';
import { rangeLines } from './parts/range-lines.js';
import { rankPlot } from './parts/rank-plot.js';

/** The outlook as a page of text, 80 columns, answer first. */
export function outlookText(outlook: Outlook, units: UnitSystem): string {
  return [
    outlookHeadline(outlook, units),
    yearsTable(outlook, units),
    plotText(outlook),
    settlingText(outlook),
    caveatText(outlook),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

function outlookHeadline(outlook: Outlook, units: UnitSystem): string {
  const { name, hasGenerator, ranked, years, fuelStore, lossOfLoad } = outlook;
  const { generatorHours, fuelLitres } = ranked;
  const volume = (litres: number) => formatQuantity(litres, 'volume', units);
  const many = count(years.length, 'year');
  const engine = !hasGenerator
    ? `${name} has no generator; ${many} of weather.`
    : generatorHours.worst === 0
      ? `${name}: the generator runs in none of ${many}.`
      : `${name}: the generator runs ${figure(generatorHours.usual.value)} h in a usual year, ${figure(generatorHours.oneInTen.value)} h in a one-in-ten bad year and ${figure(generatorHours.worst)} h in the worst of ${many}, on ${volume(fuelLitres.usual.value)}, ${volume(fuelLitres.oneInTen.value)} and ${volume(fuelLitres.worst)} of fuel.`;
  const dark =
    lossOfLoad.timeShare === 0
      ? 'No load stays dark in any of them.'
      : `Some load stays dark in ${shareText(lossOfLoad.years)}: loss-of-load probability ${smallShare(lossOfLoad.timeShare)} of all hours (time share), ${smallShare(lossOfLoad.energyShare)} of the load's energy.`;
  const store = fuelStore
    ? `A fuel store of ${volume(fuelStore.storedLitres)}, filled once a year, runs out in ${shareText(fuelStore.runsOut)}.`
    : '';
  return [engine, dark, store]
    .filter((sentence) => sentence !== '')
    .map((sentence) => wrap(sentence))
    .join('\n');
}

const shareText = ({ share, low, high }: Outlook['lossOfLoad']['years']): string =>
  `${percent(share)} of years (${percent(low)} to ${percent(high)} at 90 % confidence)`;

/** Shares far below a percent keep two digits. */
const smallShare = (share: number): string => `${(share * 100).toPrecision(2)} %`;

function yearsTable({ ranked, hasGenerator }: Outlook, units: UnitSystem): string {
  const row = (label: string, name: RankedFigure, scale = 1): string[] => {
    const { usual, oneInTen, worst }: Ranked = ranked[name];
    const shown = [usual.value, oneInTen.value].map((value) => figure(value * scale));
    return [label, ...shown, rangeText(oneInTen, scale), figure(worst * scale)];
  };
  const rows = [row('thrown away, kWh', 'throttledKWh'), row('lowest charge, %', 'lowestStateOfCharge', 100)];
  rows.push(row('autonomy, days', 'autonomyDays'));
  if (ranked.darkHours.worst > 0) rows.unshift(row('dark, h', 'darkHours'), row('dark, kWh', 'darkKWh'));
  if (hasGenerator) {
    const fuel = row(`fuel, ${volumeUnit(units)}`, 'fuelLitres', inVolumeUnit(1, units));
    rows.unshift(row('generator, h', 'generatorHours'), fuel);
  }
  return plainTable(['', 'usual', 'one in ten', '90 % sure', 'worst'], rows);
}

const rangeText = ({ low, high }: QuantileRange, scale: number): string => {
  if (low === null && high === null) return 'unknown';
  if (high === null) return `${figure(low! * scale)} or more`;
  if (low === null) return `${figure(high * scale)} or less`;
  return `${figure(low * scale)} to ${figure(high * scale)}`;
};

function plotText({ name: design, years, ranked }: Outlook): string {
  const [name, label]: [RankedFigure, string] =
    ranked.generatorHours.worst > 0 ? ['generatorHours', 'Generator hours'] : ['darkHours', 'Dark hours'];
  if (years.length < 3 || ranked[name].worst === 0) return '';
  const values = years.map((year) => year[name]);
  return [
    `${label} a year\n${rangeLines([{ name: design, values }], 'h')}`,
    `${label} of each year, from the easiest to the worst\n${rankPlot(values)}`,
  ].join('\n\n');
}

function settlingText({ settling, ranked }: Outlook): string {
  const { figure: name, steps } = settling;
  const { oneInTen } = ranked[name];
  if (steps.length < 2 || oneInTen.value === 0) return '';
  const path = steps.map(({ years, oneInTen: value }) => `${figure(value)} h from ${years}`).join(', ');
  const half = oneInTen.low === null || oneInTen.high === null ? null : (oneInTen.high - oneInTen.low) / 2;
  const sure = half === null ? 'too few years to bound it' : `+/- ${figure(half)} h at 90 % confidence`;
  const what = name === 'generatorHours' ? 'generator hours' : 'dark hours';
  return wrap(`90th percentile of the ${what}: ${path} years; ${sure}.`);
}

function caveatText({ weather, spread, years, ownYear, ranked }: Outlook): string {
  if (weather.kind === 'real') {
    return wrap(
      weather.years < 30
        ? `Weather: ${weather.years} real years. One-in-ten from so few is a guess; ask for --years 100 to resample them.`
        : `Weather: ${weather.years} real years.`,
    );
  }
  const from =
    weather.kind === 'made'
      ? `made from twelve monthly means (seed ${weather.seed})`
      : `blocks of days of ${weather.from === 1 ? 'one year' : `${weather.from} real years`}, put together anew (seed ${weather.seed})`;
  const own = ownYear ? ownYearText(ownYear, years, ranked) : '';
  return wrap(`Weather: ${from}. ${spreadText(spread, weather.kind)}${own}`);
}

/** What the spread between the years is and where it comes from, as a sentence. */
function spreadText(spread: Outlook['spread'], kind: 'made' | 'resampled'): string {
  if (!spread) {
    return kind === 'made'
      ? 'Every year keeps those means (spread 0), so bad years are understated.'
      : 'No spread between years was added, so bad years are understated: they know the dull spells of their source only, and their sums hardly change.';
  }
  const { months, forUnknownMean } = spread;
  const least = months.indexOf(Math.min(...months.filter((share) => share > 0)));
  const most = months.indexOf(Math.max(...months));
  const range = `${percent(months[least] ?? 0)} (${monthNames[least]}) to ${percent(months[most] ?? 0)} (${monthNames[most]})`;
  const source =
    spread.from === 'years'
      ? 'as those years show'
      : `assumed from months measured in four winters at Lyngby, Denmark, as ${kind === 'made' ? 'means show' : 'one year shows'} none`;
  const unknown =
    forUnknownMean > 1
      ? ' It allows for the chance that what was measured was itself sunny or dull for the place.'
      : '';
  const better = spread.from === 'years' ? '' : ' Real years (weather.otherYears) replace it by their own.';
  return `The sunshine of a month differs between years by a standard deviation of ${range}, ${source}.${unknown}${better}`;
}

/** Where the year of the site's own weather stands among the others; said whenever it lies outside them. */
function ownYearText(own: YearFigures, years: readonly YearFigures[], ranked: Outlook['ranked']): string {
  const [name, unit]: [RankedFigure, string] =
    ranked.generatorHours.worst > 0 || own.generatorHours > 0
      ? ['generatorHours', 'generator hours']
      : ['darkHours', 'dark hours'];
  const value = own[name];
  const values = years.map((year) => year[name]);
  const easier = values.filter((other) => other < value).length;
  const place =
    value > Math.max(...values)
      ? 'worse than all of them'
      : value < Math.min(...values)
        ? 'easier than all of them'
        : `worse than ${easier} of the ${values.length}`;
  if (value === 0 && ranked[name].worst === 0) return '';
  return ` The site's own year as it is has ${figure(value)} ${unit}: ${place}.`;
}
