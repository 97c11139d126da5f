// Puts the whole program, threads included, into one file that runs by itself: `node wintergap.mjs year site.yaml`.
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build } from 'esbuild';
import { withPage } from '../live/bundle.mjs';
import {
  changed,
  common,
  olderForm,
  root,
  threadStart,
  withEditorSchema,
  withoutPrograms,
  withUnits,
  withVersion,
  workers,
} from './bundle-parts.mjs';

const cases = workers.map((path) => `'${basename(path, '.ts')}.js': () => import('./${path}')`);

/** The program in its main thread; in others the task that is named, or what starts a thread of the library of threads. */
const entry = `
import { isMainThread, workerData } from 'node:worker_threads';
export const tasks = { ${cases.join(', ')} };
if (isMainThread) {
  const { default: v8 } = await import('node:v8');
  ${/^v8\..*$/m.exec(readFileSync(join(root, 'packages/cli/bin/wintergap.js'), 'utf8'))[0]}
  await import('./packages/cli/src/main.ts');
} else if (typeof workerData === 'string' && workerData in tasks) {
  await tasks[workerData]();
} else {
  globalThis.wintergapTasks = tasks;
  await import('./${threadStart}');
}
`;

/** Threads run this very file, and find their task in it. */
const inOneFile = [
  changed(/study\/(src|dist)\/common\/design-threads\.[jt]s$/, (text) =>
    replaced(
      text,
      "new URL('./design-worker.js', import.meta.url), {",
      "new URL(import.meta.url), { workerData: 'design-worker.js',",
    ),
  ),
  changed(/piscina\/dist\/index\.js$/, (text) =>
    replaced(text, "(0, node_path_1.resolve)(__dirname, 'worker.js')", '__filename'),
  ),
  changed(/piscina\/dist\/worker\.js$/, (text) =>
    replaced(
      text,
      'let handler = handlerCache.get(',
      'let handler = (await globalThis.wintergapTasks[filename.split(/[\\\\/]/).pop()]()).default; void (',
    ),
  ),
];

/** @throws Error when the text to replace is not there any more */
function replaced(text, from, to) {
  if (!text.includes(from)) throw new Error(`the single file expects "${from}" where threads are started`);
  return text.replace(from, to);
}

/** @returns what esbuild says that it has put in */
export async function buildSingleFile(outfile) {
  const { metafile } = await build({
    ...common,
    stdin: { contents: entry, resolveDir: root, loader: 'js' },
    outfile,
    banner: { js: `#!/usr/bin/env node\n${olderForm} const __filename = __pathOf(import.meta.url);` },
    plugins: [withVersion, withUnits, withEditorSchema, withoutPrograms, withPage, ...inOneFile],
    metafile: true,
  });
  return metafile;
}
