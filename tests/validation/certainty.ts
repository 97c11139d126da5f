import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What `npm run certainty` found: how often a stated range holds what it is a range of. */
export interface Certainty {
  what: string;
  /** The range as it is stated, such as `9 in 10`. */
  stated: string;
  found: string;
}

const file = join(import.meta.dirname, 'certainty.json');

export const keptCertainty = (): Certainty[] => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : []);

export const keepCertainty = (found: readonly Certainty[]): void =>
  writeFileSync(file, `${JSON.stringify(found, null, 2)}\n`);

/** A table of them, in Markdown. */
export const certaintyTable = (rows: readonly Certainty[]): string =>
  [
    '| what | stated | found |',
    '| --- | --- | --- |',
    ...rows.map(({ what, stated, found }) => `| ${what} | ${stated} | ${found} |`),
  ].join('\n');
