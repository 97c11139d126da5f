// What the bundle of the program and its single file have in common: everything they run is inside them, so that they
// need no other package where they are installed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { editorSchema } from './dist/site/editor-schema.js';

export const root = join(import.meta.dirname, '../..');
export const { version } = JSON.parse(readFileSync(join(import.meta.dirname, 'package.json'), 'utf8'));

/** Programs of the threads, by the file name under which `study` starts them. */
export const workers = [
  'packages/study/src/sweep/sweep-worker.ts',
  'packages/study/src/outlook/outlook-worker.ts',
  'packages/study/src/common/design-worker.ts',
];

/** What starts a thread in the library of threads; it looks for it beside its own file. */
export const threadStart = 'node_modules/piscina/dist/worker.js';

/** Options of esbuild for both. */
export const common = {
  absWorkingDir: root,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  minifySyntax: true,
  minifyWhitespace: true,
  // The notices stand in a file beside the program (third-party.mjs).
  legalComments: 'none',
  logLevel: 'warning',
  loader: { '.yaml': 'text', '.csv': 'text' },
  // Asked for by the library of threads, which does without.
  external: ['@napi-rs/nice'],
};

/** Libraries in the older module form ask for these where an ES module has none. */
export const olderForm =
  "import { createRequire as __createRequire } from 'node:module'; import { dirname as __dirnameOf } from 'node:path'; " +
  "import { fileURLToPath as __pathOf } from 'node:url'; const require = __createRequire(import.meta.url); " +
  'const __dirname = __dirnameOf(__pathOf(import.meta.url));';

/**
 * A file as it is to be bundled, instead of as it is written.
 *
 * @param file pattern of the end of its path
 * @param change gives the text to bundle
 */
export const changed = (file, change) => ({
  name: String(file),
  setup(build) {
    build.onLoad({ filter: file }, ({ path }) => ({
      contents: change(readFileSync(path, 'utf8')),
      loader: path.endsWith('.ts') ? 'ts' : 'js',
    }));
  },
});

/** Of a package's own files there is none where the bundle stands: the version is written into it. */
export const withVersion = changed(
  /packages\/(cli|study)\/(src|dist)\/version\.[jt]s$/,
  () => `export const version = () => ${JSON.stringify(version)};`,
);

/** A library that is loaded late is to be in the bundle all the same. */
export const withUnits = changed(/packages\/quantity\/(src|dist)\/unit-library\.[jt]s$/, (text) =>
  text.replace("createRequire(import.meta.url)('js-quantities')", "require('js-quantities')"),
);

/** Made from the schemas of all rooms, which `start` has no need to load. */
export const withEditorSchema = changed(
  /packages\/cli\/(src|dist)\/site\/editor-schema\.[jt]s$/,
  () => `export const editorSchema = () => ${JSON.stringify(editorSchema())};`,
);

/** Sub-commands that are programs of their own, which this program has none of: what starts them is not loaded. */
export const withoutPrograms = changed(/commander\/lib\/command\.js$/, (text) =>
  text.replace(
    "const childProcess = require('node:child_process');",
    "const childProcess = { spawn: (...args) => require('node:child_process').spawn(...args) };",
  ),
);
