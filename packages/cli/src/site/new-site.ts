import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { InputError } from '../input-error.js';

/** The files of a new place in a folder. */
export interface NewSite {
  site: string;
  /** The demo's weather, where the place has it. */
  weather: string;
  /** Beside the site file, so that editors find it without a network. */
  schema: string;
}

const schemaName = 'wintergap.schema.json';

/** The first line of a site file, by which editors find its schema. */
export const schemaLine: string = `# yaml-language-server: $schema=./${schemaName}\n`;

/**
 * Where a new place is written.
 *
 * @throws InputError where one of its files is there already
 */
export function newSite(folder: string): NewSite {
  const files = {
    site: join(folder, 'site.yaml'),
    weather: join(folder, 'kettle-pond.csv'),
    schema: join(folder, schemaName),
  };
  for (const path of Object.values(files)) {
    if (existsSync(path)) throw new InputError(`${path}: is already there and is left as it is; name another folder`);
  }
  return files;
}

export function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  try {
    mkdirSync(folder);
  } catch (error) {
    throw new InputError(
      `${folder}: cannot be made: ${(error as Error).message}; name a folder within one that is there`,
    );
  }
}
