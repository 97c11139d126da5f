import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

const root = join(import.meta.dirname, '..');
const bundle = join(root, 'packages/cli/bundle/main.js');

/** The program that the tests run, and the packages as built: never older than the sources that lie beside them. */
export const program = join(root, 'packages/cli/bin/wintergap.js');

/** The built entry of a package. */
export const builtPackage = (name: string): string => join(root, 'packages', name, 'dist/index.js');

/** @throws Error when there is no build, or a source is newer than it */
export function mustBeBuilt(): void {
  if (!existsSync(bundle)) throw new Error('the program is not built: run npm run build first');
  const builtAt = statSync(bundle).mtimeMs;
  for (const file of programSources()) {
    if (statSync(file).mtimeMs > builtAt) {
      throw new Error(`the built program is older than ${relative(root, file)}: run npm run build first`);
    }
  }
}

/** Everything the program is built from: what tests, benchmarks and fixtures hold does not get into it. */
export function programSources(): string[] {
  const packages = join(root, 'packages');
  return readdirSync(packages).flatMap((name) =>
    readdirSync(join(packages, name, 'src'), { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !/\.(test|bench|fixture)\.ts$/.test(file))
      .map((file) => join(packages, name, 'src', file)),
  );
}
