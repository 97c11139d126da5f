import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import { type Ranking, type RunRow, type SweepResults, type SweepSummary, valueText } from '@wintergap/study';
import { count, figure, percent, wrap } from '../figures.js';
import { plainTable } from './plain-table.js';

/** A finished sweep, as far as its last page tells of it. */
export interface SweepPage {
  site: string;
  /** Paths of the axes, as the rows' values follow each other. */
  axes: readonly string[];
  summary: SweepSummary;
  /** The base design's own year, to hold the best against; `null` where only a file was read. */
  base: SweepResults | null;
}

const titles: Record<Ranking, string> = {
  generatorHours: 'Fewest generator hours',
  fuelLitres: 'Least fuel',
  darkHours: 'Fewest dark hours',
};

/** How many designs, and the best few of them by generator hours, fuel and dark hours; 80 columns, answer first. */
export function sweepText(page: SweepPage, units: UnitSystem): string {
  const parts = [sweepHeadline(page, units)];
  const { best, failed, firstError } = page.summary;
  // Rankings that put the same designs first are told once.
  const told = new Map<string, Ranking[]>();
  for (const ranking of Object.keys(titles) as Ranking[]) {
    const key = best[ranking].map(({ number }) => number).join();
    told.set(key, [...(told.get(key) ?? []), ranking]);
  }
  if (best.generatorHours.length > 0) {
    for (const rankings of told.values()) parts.push(bestTable(page, rankings, units));
  }
  if (failed > 0) {
    parts.push(wrap(`${count(failed, 'design')} could not be run. The first of them, ${firstError}`, 80, '  '));
  }
  return parts.join('\n\n');
}

function sweepHeadline({ site, axes, summary, base }: SweepPage, units: UnitSystem): string {
  const { designs, best } = summary;
  const first = best.generatorHours[0];
  if (!first) return wrap(`${site}: none of ${count(designs, 'design')} could be run.`);
  const { generatorHours, fuelLitres, darkHours } = first.results;
  const dark = darkHours > 0 ? `, but leaves load dark for ${figure(darkHours)} h` : '';
  const against = base ? ` (the base design: ${figure(base.generatorHours)} h)` : '';
  return wrap(
    `${site}: of ${count(designs, 'design')}, number ${first.number} runs the engine least, ${figure(generatorHours)} h on ${formatQuantity(fuelLitres, 'volume', units)} of fuel${against}${dark}: ${axesText(axes, first)}.`,
  );
}

function bestTable(page: SweepPage, rankings: readonly Ranking[], units: UnitSystem): string {
  const { axes, summary, base } = page;
  const rows = summary.best[rankings[0]!];
  const title = rankings.map((ranking, i) => (i === 0 ? titles[ranking] : titles[ranking].toLowerCase())).join(', ');
  const head = ['design', 'engine', 'fuel', 'dark', 'thrown', 'lowest'];
  const unitRow = ['', 'h', '', 'h', 'kWh', 'charge'];
  const body = rows.map((row) => [String(row.number), ...figures(row.results, units)]);
  if (base) body.push(['base', ...figures(base, units)]);
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
