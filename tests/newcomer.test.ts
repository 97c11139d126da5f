import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const page = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
// Inside the project, so that packages are found as they are from any of its files.
const folder = mkdtempSync(join(import.meta.dirname, 'newcomer-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** The examples of the page, each with the file it says it would be. */
const examples = [...page.matchAll(/^### (.*)\n[\s\S]*?```ts\n\/\/ (\S+\.ts)\n([\s\S]*?)```/gm)].map(
  ([, task, file, code]) => ({ task: task!, file: file!, code: code! }),
);

test('every task of a newcomer has an example', () => {
  expect(examples.map(({ task }) => task)).toEqual([
    'Add a mount',
    'Add a chemistry',
    'Add a weather format',
    'Add a column to the ledger',
    'Add a command',
  ]);
  expect(page.split('\n### ').length - 1).toBe(examples.length);
});

test('the examples fit the types of the rooms they would stand in', () => {
  for (const { file, code } of examples) {
    const room = dirname(join(root, file));
    const path = join(folder, file.replaceAll('/', '_'));
    const inRoom = code.replace(
      /from '(\.\.?\/[^']*)'/g,
      (_, target) => `from '${relative(folder, join(room, target))}'`,
    );
    writeFileSync(path, inRoom);
  }
  writeFileSync(
    join(folder, 'tsconfig.json'),
    JSON.stringify({
      extends: '../../tsconfig.base.json',
      compilerOptions: {
        composite: false,
        incremental: false,
        noEmit: true,
        declaration: false,
        declarationMap: false,
        isolatedDeclarations: false,
        // Sources, so that no build is needed and none can be stale.
        paths: {
          '@wintergap/site/fields': ['../../packages/site/src/schema/fields.ts'],
          '@wintergap/*': ['../../packages/*/src/index.ts'],
        },
      },
      include: ['*.ts'],
    }),
  );
  const { stdout, status } = spawnSync(
    process.execPath,
    [join(root, 'node_modules/typescript/bin/tsc'), '-p', folder],
    {
      encoding: 'utf8',
    },
  );
  expect(stdout).toBe('');
  expect(status).toBe(0);
});
