import { print } from '../output/print.js';
import { writeWhole } from '../output/whole-file.js';
import { editorSchema } from '../site/editor-schema.js';
import { makeFolder, newSite, schemaLine } from '../site/new-site.js';

/** The demo, which the bundle holds as text. */
const exampleText = async () => (await import('../../../../examples/kettle-pond.yaml')).default;
export const weatherText = async (): Promise<string> => (await import('../../../../data-demo/kettle-pond.csv')).default;

export async function answerStart(folder: string): Promise<void> {
  const { site, weather, schema } = newSite(folder);
  makeFolder(folder);
  const example = (await exampleText())
    .replace(/^weather: .*$/m, 'weather: kettle-pond.csv')
    .replace(/^# Run: .*\n/m, '');
  writeWhole(weather, await weatherText());
  writeWhole(schema, editorSchema());
  writeWhole(site, `${schemaLine}${example}`);
  print(`${site}: an invented place to edit; ${weather}: its invented weather.\nNext: wintergap year ${site}\n`);
}
