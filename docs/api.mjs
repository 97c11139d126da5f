// Writes docs/api: what each package exports, as its types say it, so that a change of what others may rely on shows in
// review. Run after the build:  node docs/api.mjs
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { CompilerState, Extractor, ExtractorConfig } from '@microsoft/api-extractor';
import { modules as exported } from './reference/modules.mjs';

const root = join(import.meta.dirname, '..');

/** What can be imported: `year`, or `report/in-page`. */
export const modules = exported.map(({ name }) => name.replace('@wintergap/', ''));
export const pagePath = (module) => join(root, 'docs/api', `${fileName(module)}.md`);
const fileName = (module) => module.replace('/', '-');

/** The page of each module: its exports by name. */
export function apiPages() {
  const folder = mkdtempSync(join(tmpdir(), 'wintergap-api-'));
  try {
    const settings = modules.map((module) => settingsOf(module, folder));
    // The types are read once for all.
    const additionalEntryPoints = settings.map(({ mainEntryPointFilePath }) => mainEntryPointFilePath);
    const compilerState = CompilerState.create(settings[0], { additionalEntryPoints });
    for (const one of settings) Extractor.invoke(one, { localBuild: true, messageCallback: quiet, compilerState });
    const page = (module) => readFileSync(join(folder, `${fileName(module)}.api.md`), 'utf8');
    return new Map(modules.map((module) => [module, `${page(module).trimEnd()}\n`]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** That the report is new in its folder, and which compiler reads the types. */
const quiet = (message) => {
  message.handled = message.logLevel !== 'error';
};

function settingsOf(module, folder) {
  const { name, source } = exported.find((one) => one.name === `@wintergap/${module}`);
  const room = join(root, 'packages', name.split('/')[1]);
  const types = source.replace('/src/', '/dist/').replace(/\.ts$/, '.d.ts');
  const off = { enabled: false };
  return ExtractorConfig.prepare({
    configObjectFullPath: join(room, 'api-extractor.json'),
    packageJsonFullPath: join(room, 'package.json'),
    configObject: {
      projectFolder: room,
      mainEntryPointFilePath: types,
      compiler: { overrideTsconfig: { compilerOptions, files: [relative(room, types)] } },
      apiReport: {
        enabled: true,
        reportFolder: folder,
        reportTempFolder: join(folder, 'new'),
        reportFileName: fileName(module),
        // Types that an export names are part of what others rely on, though they are not exported. Not so the schemas of
        // the site file, thousands of lines that its own reference says better.
        includeForgottenExports: !name.startsWith('@wintergap/site'),
      },
      docModel: off,
      dtsRollup: off,
      tsdocMetadata: off,
      messages: { extractorMessageReporting: { default: silent }, tsdocMessageReporting: { default: silent } },
    },
  });
}

const silent = { logLevel: 'none' };
const compilerOptions = {
  target: 'es2022',
  module: 'nodenext',
  lib: ['es2023', 'dom'],
  types: ['node'],
  strict: true,
  exactOptionalPropertyTypes: true,
  skipLibCheck: true,
};

if (process.argv[1] === import.meta.filename) {
  mkdirSync(join(root, 'docs/api'), { recursive: true });
  for (const [module, page] of apiPages()) writeFileSync(pagePath(module), page);
}
