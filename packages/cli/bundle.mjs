// Puts the program and its workers into few files, so that it starts in a fraction of the time that hundreds of modules
// take to load, and runs without any other package. The packages stay usable one by one: their own builds are not touched.
import { existsSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { bundlePage, withPage } from '../live/bundle.mjs';
import {
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
import { withDirectImports } from './direct-imports.mjs';
import { editorSchema } from './dist/site/editor-schema.js';
import { mergeChunks } from './merge-chunks.mjs';
import { licencesOf } from './third-party.mjs';

await bundlePage();

// Made beside the old one and put in its place at the end: a program that is running meets no half-made folder.
const made = join(root, 'packages/cli/bundle.new');
const place = join(root, 'packages/cli/bundle');
rmSync(made, { recursive: true, force: true });
const { metafile } = await build({
  ...common,
  entryPoints: ['packages/cli/src/main.ts', threadStart, ...workers.filter((path) => existsSync(join(root, path)))],
  outdir: made,
  entryNames: '[name]',
  splitting: true,
  banner: { js: olderForm },
  plugins: [withVersion, withUnits, withEditorSchema, withoutPrograms, withPage, withDirectImports],
  metafile: true,
});
await mergeChunks(made, metafile, { from: ['load-accepting', 'year'], apart: ['main', 'site-text'], name: 'core.js' });
writeFileSync(join(made, 'LICENSES.txt'), licencesOf(metafile));
writeFileSync(join(made, 'wintergap.schema.json'), editorSchema());
rmSync(place, { recursive: true, force: true });
renameSync(made, place);
