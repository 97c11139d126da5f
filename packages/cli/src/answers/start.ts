import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { editorSchema } from '../editor-schema.js';
import { InputError } from '../input-error.js';
import { print } from '../print.js';
import { writeWhole } from '../whole-file.js';

/** The demo, which the bundle holds as text. */
const exampleText = async () => (await import('../../../../examples/kettle-pond.yaml')).default;
const weatherText = async () => (await import('../../../../data-demo/kettle-pond.csv')).default;

/** Beside the site file, so that editors find it without a network. */
const schemaName = 'wintergap.schema.json';

export async function answerStart(folder: string): Promise<void> {
  const site = join(folder, 'site.yaml');
  const weather = join(folder, 'kettle-pond.csv');
  const schema = join(folder, schemaName);
  for (const path of [site, weather, schema]) {
    if (existsSync(path)) throw new InputError(`${path}: is already there and is left as it is; name another folder`);
  }
  makeFolder(folder);
  const example = (await exampleText())
    .replace(/^weather: .*$/m, 'weather: kettle-pond.csv')
    .replace(/^# Run: .*\n/m, '');
  writeWhole(weather, await weatherText());
  writeWhole(schema, editorSchema());
  writeWhole(site, `# yaml-language-server: $schema=./${schemaName}\n${example}`);
  print(`${site}: an invented place to edit; ${weather}: its invented weather.\nNext: wintergap year ${site}\n`);
}

function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  try {
    mkdirSync(folder);
  } catch (error) {
    throw new InputError(
      `${folder}: cannot be made: ${(error as Error).message}; name a folder within one that is there`,
    );
  }
}
