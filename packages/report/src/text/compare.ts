import { monthInWords, monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, SnowRange } from '@wintergap/study';
import { engineTimes, longestDaysBetween } from '@wintergap/tally';
import { exceededLimits, type YearResult } from '@wintergap/year';
import { comparisonInWords, yearsAgreeing } from '../words/common-words.js';
import { figure, percent, wrap } from '../words/figures.js';
import { lowestByMonth } from '../words/lowest-by-month.js';
import { designsInWords, sharedCautions } from '../words/shared-cautions.js';
import { inShownUnits, inVolumeUnit, volumeUnit } from '../words/shown-units.js';
import { stopNamesText } from '../words/stop-text.js';
import { plainTable } from './parts/plain-table.js';
import { rangeLines } from './parts/range-lines.js';
import { weatherLine } from './parts/weather-line.js';

/** A design and its year; the first of a list is the base that the others are held against. */
export interface NamedYear {
  name: string;
  result: YearResult;
}

/**
 * Designs side by side, 80 columns, answer first: what the common years say, then the year of the file by its parts.
 *
 * @param answer of the same designs in the same order
 * @param snow the same in the two extremes of snow on the arrays; `null` where it never lies there
 */
export function compareText(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  snow: SnowRange | null = null,
): string {
  return [
    weatherLine(designs[0]!.result.weather.judgement ?? null),
    compareHeadline(designs, answer, snow),
    cautionsText(designs, units),
    commonPicture(answer),
    commonTable(answer, units),
    totalsTable(designs, units),
    engineMonths(designs),
    engineTimesTable(designs),
    arrayMonths(designs),
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

/** The sentences that answer: designs that must not be built so, then the best of the others. */
export function compareHeadline(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  snow: SnowRange | null = null,
): string {
  const stop = stopNamesText(designs);
  const best = comparisonInWords(designs[0]!.result.site.name, answer, snow);
  return [stop, best]
    .filter((sentence) => sentence !== '')
    .map((sentence) => wrap(sentence))
    .join('\n');
}

/** What the year raised, each once with the names of the designs it holds for; broken limits stand in the STOP, and in `check`. */
function cautionsText(designs: readonly NamedYear[], units: UnitSystem): string {
  const limits = new Set<string>(
    designs.flatMap(({ result }) => exceededLimits(result.limits).map(({ code }) => code)),
  );
  const others = sharedCautions(designs).filter(({ code }) => !limits.has(code));
  if (others.length === 0) return '';
  const lines = others.map(({ text, designs: names }) =>
    wrap(`${designsInWords(names, designs.length)}: ${inShownUnits(text, units)}`, 80, '    '),
  );
  return ['Cautions', ...lines].join('\n');
}

function commonPicture({ designs, merit }: CommonAnswer): string {
  if (designs.length < 2 || merit !== 'generatorHours' || designs[0]!.hoursOfYears.length < 2) return '';
  const lines = designs.map(({ name, hoursOfYears }) => ({ name, values: hoursOfYears }));
  return `Engine hours a year\n${rangeLines(lines, 'h')}`;
}

function commonTable({ designs, weather, merit }: CommonAnswer, units: UnitSystem): string {
  if (weather.count < 2 || merit !== 'generatorHours') return '';
  const rows = designs.map(({ name, ranked, generatorHours, fuelLitres, againstBase }) => {
    const against = againstBase?.generatorHours;
    return [
      shortName(name),
      figure(ranked.generatorHours.usual.value),
      figure(ranked.generatorHours.oneInTen.value),
      figure(generatorHours.mean),
      figure(inVolumeUnit(fuelLitres.mean, units)),
      against ? signed(against.mean) : '',
      against?.low == null || against.high === null ? '' : `${signed(against.low)} to ${signed(against.high)}`,
      against ? (against.verdict === 'none' ? 'no difference' : yearsAgreeing(against).replace(/ years?$/, '')) : '',
    ];
  });
  return plainTable(
    ['', 'usual', '1 in 10', 'mean', 'fuel', 'against', '90 % sure', 'goes so'],
    [['', 'h', 'h', 'h', volumeUnit(units), 'base, h', 'h', ''], ...rows],
    1,
  );
}

function totalsTable(designs: readonly NamedYear[], units: UnitSystem): string {
  const darkMonth = designs[0]!.result.summary.darkSeason.month;
  const rows = designs.map(({ name, result: { summary, ledger } }) => [
    name,
    figure(summary.generator.hours),
    figure(summary.generator.starts, 0),
    figure(inVolumeUnit(summary.generator.fuelLitres, units)),
    figure(summary.throttle.kWh),
    figure(summary.load.darkKWh),
    percent(lowestByMonth(ledger.lowestStateOfCharge)[darkMonth - 1]!),
  ]);
  const table = plainTable(
    ['', 'engine', 'starts', 'fuel', 'thrown', 'dark', monthInWords(darkMonth)],
    [['', 'h', '', volumeUnit(units), 'kWh', 'kWh', 'lowest'], ...rows],
  );
  return `In the year of the file\n${table}`;
}

/** Tables of engine hours say nothing where no design runs one. */
const runsEngine = (designs: readonly NamedYear[]): boolean =>
  designs.some(({ result }) => result.summary.generator.hours > 0);

function engineMonths(designs: readonly NamedYear[]): string {
  const rows = designs.map(({ name, result }) => [
    name,
    ...result.summary.generator.months.map(({ hours }) => (hours === 0 ? '-' : figure(hours, 0))),
  ]);
  return runsEngine(designs) ? monthsTable('Engine hours by month', rows) : '';
}

const dayParts = [0, 4, 8, 12, 16, 20];

/** When of the day the engine runs, and how long it rests between runs. */
function engineTimesTable(designs: readonly NamedYear[]): string {
  if (!runsEngine(designs)) return '';
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
