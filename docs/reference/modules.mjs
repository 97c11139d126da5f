// What the packages let others import: the name, and the source that stands behind it.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const packages = join(import.meta.dirname, '../../packages');

/** Each module with its name as it is imported, its source, and the README of its package where it is the package itself. */
export const modules = readdirSync(packages).flatMap((room) => {
  const { name, exports } = JSON.parse(readFileSync(join(packages, room, 'package.json'), 'utf8'));
  return Object.entries(exports)
    .filter(([, { types }]) => types !== undefined)
    .map(([path, { types }]) => ({
      name: join(name, path),
      source: join(packages, room, types.replace('dist/', 'src/').replace('.d.ts', '.ts')),
      readme: path === '.' ? join(packages, room, 'README.md') : null,
    }));
});
