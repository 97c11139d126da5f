import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** Sources of a room that do something: no tests, no lists of exports, no bare types. */
export function sourcesOf(room) {
  const folder = `packages/${room}/src`;
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter(
      (file) => file.endsWith('.ts') && !/\.(test|bench|fixture)\.ts$/.test(file) && !/(^|\/)index\.ts$/.test(file),
    )
    .map((file) => `${folder}/${file}`)
    .filter((file) => /=>|\bfunction\b|\bconst\b/.test(readFileSync(join(root, file), 'utf8')))
    .sort();
}
