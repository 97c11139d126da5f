import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { EngineBound } from './least-engine.js';

const file = join(import.meta.dirname, 'bounds.jsonl');
const readme = join(import.meta.dirname, 'README.md');
const begin = '<!-- table: begin -->';
const end = '<!-- table: end -->';

/** One site of the last run. */
export interface Kept extends EngineBound {
  site: string;
  bus: 'ac' | 'dc';
  hours: number;
}

export const keptBounds = (): Kept[] =>
  existsSync(file)
    ? readFileSync(file, 'utf8')
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line))
    : [];

/** Keeps what was found and writes the table of the README anew. */
export function keepBounds(found: readonly Kept[]): void {
  const short = (_key: string, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(6)) : value);
  writeFileSync(file, found.map((row) => `${JSON.stringify(row, short)}\n`).join(''));
  const [head = '', tail = ''] = readFileSync(readme, 'utf8').split(new RegExp(`${begin}[^]*${end}`));
  writeFileSync(readme, `${head}${begin}\n${boundTable(keptBounds())}\n${end}${tail}`);
}

/** The part of the README that stands between its marks. */
export const printedTable = (): string => readFileSync(readme, 'utf8').split(begin)[1]!.split(end)[0]!.trim();

export function boundTable(kept: readonly Kept[]): string {
  const rows = kept.map(({ site, bus, hours, ranKWh, leastKWh, likelyKWh }) => {
    const cells = [site.replace('.yaml', ''), bus, hours.toFixed(1), ranKWh.toFixed(1), leastKWh.toFixed(1)];
    return `| ${[...cells, likelyKWh.toFixed(1), `${Math.round((100 * likelyKWh) / ranKWh)} %`].join(' | ')} |`;
  });
  return [
    '| site | engine | h | ran, kWh | least, kWh | likely least, kWh | of what ran |',
    '| --- | --- | ---: | ---: | ---: | ---: | ---: |',
    ...rows,
  ].join('\n');
}
