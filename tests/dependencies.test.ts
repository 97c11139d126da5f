import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const manifest = (folder: string) => JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
const page = readFileSync(join(root, 'docs/dependencies.md'), 'utf8');
const [running = '', building = ''] = page.split('\n## ').slice(1);

test('every library that a package declares has its line, with its version and what it is for', () => {
  const folders = ['.', 'docs/reference', ...readdirSync(join(root, 'packages')).map((name) => join('packages', name))];
  const declared = folders.flatMap((folder) => {
    const { dependencies = {}, devDependencies = {} } = manifest(folder) as Record<string, Record<string, string>>;
    return [
      ...Object.entries(dependencies).map(([name, version]) => ({ name, version, part: running })),
      // What the program's package is built from runs all the same.
      ...Object.entries(devDependencies).map(([name, version]) => ({
        name,
        version,
        part: folder.startsWith('packages') ? running : building,
      })),
    ];
  });
  const others = declared.filter(({ name }) => !name.startsWith('@wintergap/'));
  expect(others.length).toBeGreaterThan(20);
  for (const { name, version, part } of others) expect(part, name).toMatch(`| \`${name}\` ${version} | `);
});

test('no line is left of a library that nobody declares any more', () => {
  const declared = [
    manifest('.'),
    manifest('docs/reference'),
    ...readdirSync(join(root, 'packages')).map((name) => manifest(join('packages', name))),
  ].flatMap(({ dependencies = {}, devDependencies = {} }) => Object.keys({ ...dependencies, ...devDependencies }));
  const lines = [...`${running}${building}`.matchAll(/^\| `([^`]+)` /gm)].map(([, name]) => name);
  expect(lines.filter((name) => !declared.includes(name!))).toEqual([]);
});
