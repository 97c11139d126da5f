import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Chemistry, chemistryDefaults } from '../packages/battery/src/chemistry-defaults.js';

const root = join(import.meta.dirname, '..', 'packages');
/** The room of the cells, and the site file's, whose keys name them. */
const rooms = ['battery', 'site'];
/** Puts questions and writes a site file of the answers: its words are the site file's. */
const writesSiteFile = 'cli/src/ask/';

const sources = readdirSync(root)
  .filter((name) => !rooms.includes(name))
  .flatMap((name) =>
    readdirSync(join(root, name, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.ts$/.test(file) && !/\.(test|bench|fixture)\.ts$/.test(file))
      .map((file) => join(name, 'src', file))
      .filter((file) => !file.startsWith(writesSiteFile)),
  );

test('no room but the cells and the site file names a chemistry: the others ask what its cells bear', () => {
  expect(sources.length).toBeGreaterThan(300);
  const names = Object.keys(chemistryDefaults) as Chemistry[];
  const named = new RegExp(`['"\`](${names.join('|')})['"\`]`);
  expect(sources.filter((file) => named.test(readFileSync(join(root, file), 'utf8')))).toEqual([]);
});
