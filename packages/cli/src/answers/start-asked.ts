import { basename, resolve } from 'node:path';
import { parseSite } from '@wintergap/site';
import { askSite } from '../ask/ask-site.js';
import { terminalAsker } from '../ask/asker.js';
import { siteText } from '../ask/site-text.js';
import { print } from '../output/print.js';
import { writeWhole } from '../output/whole-file.js';
import { editorSchema } from '../site/editor-schema.js';
import { makeFolder, newSite, schemaLine } from '../site/new-site.js';
import { weatherText } from './start.js';

/** Asks about a place and writes its site file; nothing is written before the last answer. */
export async function answerStartAsked(folder: string): Promise<void> {
  const { site, weather, schema } = newSite(folder);
  const asker = terminalAsker();
  try {
    const answers = await askSite(asker);
    const text = siteText(answers, basename(resolve(folder)), resolve(folder));
    // Whatever was answered, what is written is right.
    parseSite(text, site);
    makeFolder(folder);
    if (answers.weather.kind === 'demo') writeWhole(weather, await weatherText());
    writeWhole(schema, editorSchema());
    writeWhole(site, `${schemaLine}${text}`);
    print(
      `${site}: your place with typical parts, to be replaced by those of the data sheets.\nNext: wintergap year ${site}\n`,
    );
  } finally {
    asker.close();
  }
}
