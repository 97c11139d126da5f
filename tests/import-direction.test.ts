import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

/** What each package may import, as DEVELOPERS.md says: only rooms listed above it. */
const mayImport: Record<string, readonly string[]> = {
  ground: [],
  quantity: ['ground'],
  irradiance: ['ground'],
  weather: ['ground', 'irradiance', 'quantity'],
  mounts: ['ground', 'irradiance'],
  array: ['ground'],
  battery: ['ground'],
  loads: ['ground'],
  generator: ['ground'],
  tally: ['ground'],
  site: ['ground', 'quantity', 'irradiance', 'weather', 'mounts', 'array', 'battery', 'loads', 'generator', 'tally'],
  year: [
    'ground',
    'quantity',
    'irradiance',
    'weather',
    'mounts',
    'array',
    'battery',
    'loads',
    'generator',
    'tally',
    'site',
  ],
  seasonal: ['ground', 'tally', 'site', 'year'],
  study: ['ground', 'weather', 'tally', 'site', 'year', 'seasonal'],
  report: ['ground', 'quantity', 'weather', 'tally', 'site', 'year', 'seasonal', 'study'],
  live: ['ground', 'quantity', 'weather', 'tally', 'site', 'year', 'seasonal', 'study', 'report'],
  cli: ['ground', 'quantity', 'weather', 'tally', 'site', 'year', 'seasonal', 'study', 'report', 'live'],
};

const root = join(import.meta.dirname, '..', 'packages');
const sourcesOf = (name: string) =>
  readdirSync(join(root, name, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));

test('every package has its line in the table of directions', () => {
  expect(readdirSync(root).sort()).toEqual(Object.keys(mayImport).sort());
});

for (const [name, allowed] of Object.entries(mayImport)) {
  test(`${name} imports only what stands above it, declares it, and refers to it`, () => {
    const manifest = JSON.parse(readFileSync(join(root, name, 'package.json'), 'utf8'));
    // A tsconfig may hold comments, on lines of their own.
    const config = readFileSync(join(root, name, 'tsconfig.json'), 'utf8').replace(/^ *\/\/.*$/gm, '');
    const references: { path: string }[] = JSON.parse(config).references;
    // The program is bundled: what it imports is in its bundle.
    const declared = Object.keys((name === 'cli' ? manifest.devDependencies : manifest.dependencies) ?? {});
    const files = sourcesOf(name).filter((file) => !/\.(test|bench|fixture)\.ts$/.test(file));
    for (const file of files) {
      const source = readFileSync(join(root, name, 'src', file), 'utf8');
      for (const [, fromText, dynamic] of source.matchAll(
        /^(?:import|export|\}) ?[^'\n]*from '([^'.][^']*)'|import\('([^'.][^']*)'\)/gm,
      )) {
        const specifier = fromText ?? dynamic;
        // What begins with # is one of the package's own files, chosen by where it runs.
        if (specifier!.startsWith('node:') || specifier!.startsWith('#')) continue;
        const own = /^@wintergap\/([a-z]+)/.exec(specifier!)?.[1];
        if (own) expect(allowed, `${name}/src/${file} imports ${specifier}`).toContain(own);
        const dependency = own
          ? `@wintergap/${own}`
          : specifier!
              .split('/')
              .slice(0, specifier!.startsWith('@') ? 2 : 1)
              .join('/');
        expect(declared, `${name}/package.json lacks ${dependency}`).toContain(dependency);
      }
      for (const [, path] of source.matchAll(/from '(\.\.?\/[^']*)'/g)) {
        expect(join(dirname(file), path!), `${name}/src/${file} reaches out of its package`).not.toMatch(/^\.\./);
      }
    }
    for (const { path } of references)
      expect(allowed, `${name}/tsconfig.json refers to ${path}`).toContain(path.slice(3));
    expect(files, `${name} has sources`).not.toHaveLength(0);
  });
}

/** The files of a package that a file imports, types included. */
function importsWithin(name: string, file: string): string[] {
  const source = readFileSync(join(root, name, 'src', file), 'utf8');
  return [...source.matchAll(/(?:from |import\()'(\.\.?\/[^']*)\.js'/g)].flatMap(([, path]) =>
    ['.ts', '.tsx'].map((ending) => join(dirname(file), `${path}${ending}`)),
  );
}

// Files that import each other, though it be types only, can be read and moved only together.
test.each(Object.keys(mayImport))('no files of %s import each other in a circle', (name) => {
  const files = new Set(sourcesOf(name));
  const seen = new Set<string>();
  const visit = (file: string, path: readonly string[]) => {
    expect(path, `${[...path, file].join(' -> ')}`).not.toContain(file);
    if (seen.has(file)) return;
    for (const next of importsWithin(name, file)) if (files.has(next)) visit(next, [...path, file]);
    seen.add(file);
  };
  for (const file of files) visit(file, []);
  expect(seen.size).toBe(files.size);
});
