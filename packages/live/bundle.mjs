// Puts what runs in the browser into two files: the view, and the engine that its workers run. Both are made from the very
// packages of the program; a package that would read files there fails the build.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { build } from 'esbuild';
import { licencesOf } from '../cli/third-party.mjs';

const root = join(import.meta.dirname, '../..');
const folder = join(root, 'packages/live/dist/page');

/** Writes both files, and the notices of the libraries that are in them. */
export async function bundlePage() {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: { view: 'packages/live/src/view/main.tsx', engine: 'packages/live/src/engine/worker.ts' },
    outdir: 'page',
    bundle: true,
    write: false,
    metafile: true,
    // Named by code of the program that is left out here.
    external: ['node:*', ...builtinModules],
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    minify: true,
    legalComments: 'none',
    logLevel: 'error',
  });
  const taken = {};
  for (const { imports, inputs } of Object.values(metafile.outputs)) {
    const asked = imports.map(({ path }) => path);
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      if (bytesInOutput > 0) taken[file] = metafile.inputs[file];
    }
    if (asked.length === 0) continue;
    const by = Object.keys(inputs).filter((file) =>
      metafile.inputs[file].imports.some(({ path }) => asked.includes(path)),
    );
    throw new Error(`the page would import ${asked.join(', ')}, which no browser has: see ${by.join(', ')}`);
  }
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  // The end of a script within the code would be one of the page's.
  const write = (name, text) => writeFileSync(join(folder, name), text.replaceAll('</script', '<\\/script'));
  for (const { path, text } of outputFiles) write(path.split(/[\\/]/).at(-1), text);
  write('notices.txt', licencesOf({ inputs: taken }));
}

/** For the program's bundle: the code of the page stands in it, as there are no files beside it. */
export const withPage = {
  name: 'page',
  setup(build) {
    build.onLoad({ filter: /packages\/live\/(src|dist)\/serve\/page-code\.[jt]s$/ }, () => {
      const [view, engine, notices] = ['view.js', 'engine.js', 'notices.txt'].map((name) =>
        readFileSync(join(folder, name), 'utf8'),
      );
      return {
        contents: `export const pageCode = () => (${JSON.stringify({ view, engine, notices })});`,
        loader: 'js',
      };
    });
  },
};
