import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const filesUnder = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(tsx?|mjs|md)$/.test(file) && !/(^|\/)(node_modules|dist|bundle)\//.test(file))
    .map((file) => join(folder, file));

const packages = readdirSync(join(root, 'packages'));
const files = new Map(
  [...['packages', 'tests', 'bench', 'examples', 'docs'].flatMap(filesUnder), 'README.md', 'DEVELOPERS.md'].map(
    (file) => [file, readFileSync(join(root, file), 'utf8')],
  ),
);
const namesIn = (list: string): string[] =>
  list
    .split(',')
    .map((part) => part.replace(/^\s*(type )?/, '').trim())
    .filter((part) => part !== '');

/** Functions and constants of a list; types go with the functions that take or give them. */
const valuesIn = (list: string): string[] => namesIn(list).filter((part) => !new RegExp(`type ${part}\\b`).test(list));

/** Names that a text takes from a package: by import, in code or in an example of a README. */
function takenFrom(name: string, text: string): string[] {
  const lists = text.matchAll(/(?:import|export) (?:type )?\{([^}]*)\} from '([^']+)'/g);
  const dynamic = text.matchAll(/\{([^}]*)\} = await import\('([^']+)'\)/g);
  return [...lists, ...dynamic]
    .filter(([, , from]) => from === `@wintergap/${name}` || new RegExp(`/${name}/(dist|src)/index\\.js$`).test(from!))
    .flatMap(([, list]) => namesIn(list!).map((part) => part.split(/ as |:/)[0]!.trim()));
}

for (const name of packages) {
  const index = files.get(join('packages', name, 'src', 'index.ts'));
  if (index === undefined) continue;
  test(`every public function and constant of ${name} is used outside its package or shown in its README`, () => {
    const published = [...index.matchAll(/export \{([^}]*)\} from/g)].flatMap(([, list]) => valuesIn(list!));
    expect(published).not.toEqual([]);
    const used = new Set<string>();
    for (const [file, text] of files) {
      const isOwnCode = file.startsWith(join('packages', name, 'src'));
      if (!isOwnCode) for (const taken of takenFrom(name, text)) used.add(taken);
    }
    expect(published.filter((one) => !used.has(one))).toEqual([]);
  });
}
