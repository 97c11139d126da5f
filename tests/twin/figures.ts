import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Compared, type Figures, moreInTwin } from './compare.js';

const file = join(import.meta.dirname, 'figures.jsonl');
const readme = join(import.meta.dirname, 'README.md');
const begin = '<!-- figures: begin -->';
const end = '<!-- figures: end -->';

/** What the last campaign found, design by design. */
export const keptFigures = (): Compared[] =>
  existsSync(file)
    ? readFileSync(file, 'utf8')
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line))
    : [];

/** Keeps what was found, in place of what was kept of the same designs, and writes the tables of the README anew. */
export function keepFigures(found: readonly Compared[]): void {
  const isNew = new Set(found.map(({ place, seed }) => `${place} ${seed}`));
  const kept = keptFigures().filter(({ place, seed }) => !isNew.has(`${place} ${seed}`));
  const all = [...kept, ...found].sort((a, b) => a.place.localeCompare(b.place) || a.seed - b.seed);
  const short = (_key: string, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(6)) : value);
  writeFileSync(file, all.map((row) => `${JSON.stringify(row, short)}\n`).join(''));
  const [head = '', tail = ''] = readFileSync(readme, 'utf8').split(new RegExp(`${begin}[^]*${end}`));
  writeFileSync(readme, `${head}${begin}\n${figureTables(all)}\n${end}${tail}`);
}

/** The part of the README that stands between its marks. */
export const printedTables = (): string => readFileSync(readme, 'utf8').split(begin)[1]!.split(end)[0]!.trim();

const percent = (share: number): string => (100 * share).toFixed(2);
const worst = (values: number[]): number => values.reduce((most, v) => (Math.abs(v) > Math.abs(most) ? v : most), 0);
const mean = (values: number[]): number => values.reduce((total, v) => total + v, 0) / values.length;

/** Sums of a figure over designs, packages and twin. */
export function sums(rows: readonly Compared[], figure: keyof Figures): [packages: number, twin: number] {
  const of = (who: 'packages' | 'twin') => rows.reduce((total, row) => total + row[who][figure], 0);
  return [of('packages'), of('twin')];
}

/** One line for each place: by how much the twin has more. */
export function placesTable(rows: readonly Compared[]): string {
  const places = [...new Set(rows.map(({ place }) => place))];
  const summary = places.map((place) => {
    const here = rows.filter((row) => row.place === place);
    const part = (figure: keyof Figures) => {
      const more = here.map((row) => moreInTwin(row, figure));
      return `${percent(mean(more))} (${percent(worst(more))})`;
    };
    const [packagesH, twinH] = sums(here, 'engineH');
    const points = here.map(({ packages, twin }) => 100 * (twin.lowestCharge - packages.lowestCharge));
    const beyond = points.filter((p) => Math.abs(p) > 1).length;
    return `| ${place} | ${here.length} | ${part('planeKWhPerM2')} | ${part('availableKWh')} | ${part('throttledKWh')} | ${packagesH.toFixed(0)}, ${twinH.toFixed(0)} | ${percent(twinH / packagesH - 1)} | ${mean(points).toFixed(2)} (${worst(points).toFixed(2)}) | ${beyond} |`;
  });
  return [
    'By how much the twin has more, in per cent: the mean over the designs and, in brackets, the largest. Engine hours are',
    'summed over the designs, packages first; lowest charge in points of the bank.',
    '',
    '| place | designs | plane | array | throttled | engine h | more, % | lowest charge | beyond 1 point |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...summary,
  ].join('\n');
}

/** The tables of the README: places first, then every design. */
export function figureTables(rows: readonly Compared[]): string {
  const designs = rows.map((row) => {
    const { packages, twin } = row;
    const hours =
      packages.engineH + twin.engineH > 0 ? `${packages.engineH.toFixed(1)}, ${twin.engineH.toFixed(1)}` : '';
    const points = 100 * (twin.lowestCharge - packages.lowestCharge);
    return `| ${row.place} ${row.seed} | ${row.design} | ${percent(moreInTwin(row, 'planeKWhPerM2'))} | ${percent(moreInTwin(row, 'availableKWh'))} | ${percent(moreInTwin(row, 'throttledKWh'))} | ${hours} | ${points.toFixed(2)} |`;
  });
  return [
    placesTable(rows),
    '',
    '| run | design | plane % | array % | throttled % | engine h | points |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...designs,
  ].join('\n');
}
