// Puts the program and its workers into few files, so that it starts in a fraction of the time that hundreds of modules
// take to load. The packages stay usable one by one: their own builds are not touched.
import { existsSync, renameSync, rmSync } from 'node:fs';
import { build } from 'esbuild';

const workers = [
  'packages/study/src/sweep/sweep-worker.ts',
  'packages/study/src/outlook/outlook-worker.ts',
  'packages/study/src/common/design-worker.ts',
];

// Made beside the old one and put in its place at the end: a program that is running meets no half-made folder.
rmSync('packages/cli/bundle.new', { recursive: true, force: true });
await build({
  entryPoints: ['packages/cli/src/main.ts', ...workers.filter((path) => existsSync(path))],
  outdir: 'packages/cli/bundle.new',
  entryNames: '[name]',
  bundle: true,
  // Finds its own worker beside its own source.
  external: ['piscina'],
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  logLevel: 'warning',
  banner: {
    // Libraries in the older module form ask for `require` when they are bundled into an ES module.
    js: "import { createRequire as __createRequire } from 'node:module'; const require = __createRequire(import.meta.url);",
  },
});
rmSync('packages/cli/bundle', { recursive: true, force: true });
renameSync('packages/cli/bundle.new', 'packages/cli/bundle');
