import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import {
  type CommonAnswer,
  type CommonBest,
  type CommonFigures,
  type Ranking,
  type RunRow,
  type SweepResults,
  type SweepSummary,
  valueText,
} from '@wintergap/study';
import { usualAndBad, yearsInWords } from '../words/common-words.js';
import { count, figure, percent, wrap } from '../words/figures.js';
import { plainTable } from './parts/plain-table.js';

/** A finished sweep, as far as its last page tells of it. */
export interface SweepPage {
  site: string;
  /** Paths of the axes, as the rows' values follow each other. */
  axes: readonly string[];
  summary: SweepSummary;
  /** The base design's own year, to hold the best against; `null` where only a file was read. */
  base: SweepResults | null;
  /** The best over common years, under their numbers; `null` where they rest on the file's year. */
  common: CommonBest | null;
  /** Things without a price that some of the designs have and others have not. */
  unpricedApart: readonly string[];
  /** Things without a price that all of them have. */
  unpriced: readonly string[];
  currency: string | null;
}

const titles: Record<Ranking, string> = {
  generatorHours: 'Fewest generator hours',
  fuelLitres: 'Least fuel',
  darkHours: 'Fewest dark hours',
};

/** How many designs, and the best few of them by generator hours, fuel and dark hours; 80 columns, answer first. */
export function sweepText(page: SweepPage, units: UnitSystem): string {
  const parts = [sweepHeadline(page, units)];
  const { best, failed, firstError, overLimits, firstLimits } = page.summary;
  // Rankings that put the same designs first are told once.
  const told = new Map<string, Ranking[]>();
  for (const ranking of Object.keys(titles) as Ranking[]) {
    const key = best[ranking].map(({ number }) => number).join();
    told.set(key, [...(told.get(key) ?? []), ranking]);
  }
  if (best.generatorHours.length > 0) {
    for (const rankings of told.values()) parts.push(bestTable(page, rankings, units));
    parts.push(frontTable(page));
    const byCost = page.summary.front[0]?.row.results.cost !== undefined;
    if (byCost && page.unpriced.length > 0) {
      parts.push(wrap(`Not in the cost, because it has no price: ${page.unpriced.join(', ')}.`));
    }
    if (page.unpricedApart.length > 0) {
      parts.push(
        wrap(`No cost is told: ${page.unpricedApart.join(', ')}, without a price, is in some of these designs only.`),
      );
    }
  }
  if (overLimits > 0) {
    parts.push(
      wrap(`${count(overLimits, 'design')} left out for a limit. The first of them, ${firstLimits}`, 80, '  '),
    );
  }
  if (failed > 0) {
    parts.push(wrap(`${count(failed, 'design')} could not be run. The first of them, ${firstError}`, 80, '  '));
  }
  return parts.join('\n\n');
}

function sweepHeadline(page: SweepPage, units: UnitSystem): string {
  const { site, axes, summary, base, common } = page;
  const { designs, best, overLimits } = summary;
  const first = best.generatorHours[0];
  if (!first) {
    const why = overLimits > 0 ? 'is within its limits' : 'could be run';
    return wrap(`${site}: none of ${count(designs, 'design')} ${why}.`);
  }
  if (common) return wrap(leadersInWords(page, common));
  const { generatorHours, fuelLitres, darkHours } = first.results;
  const dark = darkHours > 0 ? `, but leaves load dark for ${figure(darkHours)} h` : '';
  const against = base ? ` (the base design: ${figure(base.generatorHours)} h; both in the file's year)` : '';
  return wrap(
    `${site}: of ${count(designs, 'design')}, number ${first.number} runs the engine least, ${figure(generatorHours)} h on ${formatQuantity(fuelLitres, 'volume', units)} of fuel${against}${dark}: ${axesText(axes, first)}.`,
  );
}

/** The leaders over common years: one, or a tie that is called one. */
function leadersInWords({ site, axes, summary }: SweepPage, common: CommonBest): string {
  const { leaders, merit, weather } = common;
  const of = `${site}: of ${count(summary.designs, 'design')}`;
  const unit = merit === 'generatorHours' ? 'h' : 'kWh';
  const against = ` (the base design: ${figure(common.base.ranked[merit].usual.value)} ${unit} in a usual year)`;
  const does = merit === 'generatorHours' ? 'runs the engine least' : 'leaves the least dark';
  const leading = common.designs.filter(({ name }) => leaders.includes(name));
  if (leading.length === 1) {
    const [only] = leading;
    return `${of}, number ${only!.name} ${does}, ${amountText(only!, merit)}${against}: ${axesText(axes, rowOf(summary, only!.name))}.`;
  }
  const usual = leading.map(({ ranked }) => ranked[merit].usual.value);
  const range = `${figure(Math.min(...usual))} to ${figure(Math.max(...usual))} ${unit}`;
  return `${of}, numbers ${leaders.join(', ')} ${merit === 'generatorHours' ? 'run the engine least' : 'leave the least dark'} and are equal as far as ${yearsInWords(weather)} can show, ${range} in a usual year${against}.`;
}

const amountText = (design: CommonFigures, merit: CommonAnswer['merit']): string =>
  merit === 'generatorHours' ? usualAndBad(design) : `${figure(design.ranked.darkKWh.usual.value)} kWh in a usual year`;

const rowOf = ({ best }: SweepSummary, name: string): RunRow =>
  Object.values(best)
    .flat()
    .find(({ number }) => String(number) === name)!;

/** Leaders first, in the order of their numbers: a tie is not ranked; the others as the file's year has them. */
function inOrder(rows: readonly RunRow[], common: CommonAnswer | null): readonly RunRow[] {
  if (!common) return rows;
  const leads = ({ number }: RunRow) => common.leaders.includes(String(number));
  return [...rows.filter(leads).sort((a, b) => a.number - b.number), ...rows.filter((row) => !leads(row))];
}

/** Designs of the front that are shown. */
const mostOfFront = 10;

/** What less engine time takes in array and bank, or costs. */
function frontTable({ summary, currency }: SweepPage): string {
  const { front } = summary;
  const [first] = front;
  if (!first) return '';
  const byCost = first.row.results.cost !== undefined;
  const hasMeans = first.row.results.generatorHoursMean !== undefined;
  const head = ['design', 'array', 'bank', ...(byCost ? ['cost'] : []), 'engine', ...(hasMeans ? ['+/-'] : []), 'dark'];
  const unitRow = ['', 'kW', 'kWh', ...(byCost ? [currency ?? ''] : []), 'h', ...(hasMeans ? ['h'] : []), 'kWh', ''];
  const step = Math.max(1, (front.length - 1) / (mostOfFront - 1));
  const shown =
    front.length <= mostOfFront ? front : Array.from({ length: mostOfFront }, (_, i) => front[Math.round(i * step)]!);
  const body = shown.map(({ row: { number, results }, ties }) => [
    String(number),
    figure(results.ratedKW),
    figure(results.bankKWh),
    ...(byCost ? [figure(results.cost!, 0)] : []),
    figure(results.generatorHoursMean ?? results.generatorHours),
    ...(hasMeans ? [figure(results.generatorHoursError ?? 0)] : []),
    figure(results.darkKWhMean ?? results.darkKWh),
    tiesText(ties),
  ]);
  const left = front.length - shown.length;
  const title = `What fewer engine hours take, from the ${byCost ? 'cheapest' : 'smallest'} on: no design is better in all${left > 0 ? `; ${count(front.length, 'design')}, ${shown.length} of them here` : ''}`;
  return `${wrap(title)}\n${plainTable([...head, 'no better, and no smaller'], [unitRow, ...body])}`;
}

function tiesText(ties: readonly RunRow[]): string {
  const numbers = ties.slice(0, 4).map(({ number }) => String(number));
  return ties.length > 4 ? `${numbers.join(', ')} +${ties.length - 4}` : numbers.join(', ');
}

function bestTable(page: SweepPage, rankings: readonly Ranking[], units: UnitSystem): string {
  const { axes, summary, base, common } = page;
  const rows = inOrder(summary.best[rankings[0]!], common);
  const heading = rankings.map((ranking, i) => (i === 0 ? titles[ranking] : titles[ranking].toLowerCase())).join(', ');
  const title = common
    ? wrap(
        `${heading} (= leads over ${yearsInWords(common.weather)}: none is better beyond chance; usual: their median)`,
      )
    : heading;
  const head = ['design', ...(common ? ['usual'] : []), 'engine', 'fuel', 'dark', 'thrown', 'lowest'];
  const unitRow = ['', ...(common ? ['h'] : []), 'h', '', 'h', 'kWh', 'charge'];
  const usualOf = (name: string) => {
    const hours = common?.designs.find((design) => design.name === name)?.ranked.generatorHours.usual.value;
    return hours === undefined ? '' : figure(hours);
  };
  const marked = (name: string) => (common?.leaders.includes(name) ? `${name} =` : name);
  const body = rows.map(({ number, results }) => {
    const name = String(number);
    return [marked(name), ...(common ? [usualOf(name)] : []), ...figures(results, units)];
  });
  if (base) body.push(['base', ...(common ? [''] : []), ...figures(base, units)]);
  const beside = plainTable(
    [...head, ...shortNames(axes)],
    [
      [...unitRow, ...axes.map(() => '')],
      ...body.map((cells, i) => [...cells, ...(rows[i]?.values.map(valueText) ?? axes.map(() => ''))]),
    ],
  );
  if (Math.max(...beside.split('\n').map((line) => line.length)) <= 80) return `${title}\n${beside}`;
  const below = rows.map((row) => wrap(`${row.number}: ${axesText(axes, row)}`, 80, '  '));
  return [title, plainTable(head, [unitRow, ...body]), ...below].join('\n');
}

const figures = (results: SweepResults, units: UnitSystem): string[] => [
  figure(results.generatorHours),
  formatQuantity(results.fuelLitres, 'volume', units),
  figure(results.darkHours),
  figure(results.throttledKWh),
  percent(results.minStateOfCharge),
];

const axesText = (axes: readonly string[], { values }: RunRow): string =>
  axes.map((path, a) => `${path} ${valueText(values[a])}`).join(', ');

/** The last key of each path, or the whole path where two end alike. */
function shortNames(axes: readonly string[]): string[] {
  const last = axes.map((path) => path.slice(path.lastIndexOf('.') + 1));
  return last.map((name, a) => (last.indexOf(name) === last.lastIndexOf(name) ? name : axes[a]!));
}
