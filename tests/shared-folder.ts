import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';

/** Folder with reference material and real weather that is not part of the project; see DEVELOPERS.md. */
export const sharedFolder = process.env.WINTERGAP_SHARED ?? resolve(import.meta.dirname, '../../shared');

/** Path of a real weather file, or `null`, said on stderr, where it is absent. */
export function realWeather(name: string): string | null {
  const path = join(sharedFolder, 'weather', name);
  if (existsSync(path)) return path;
  process.stderr.write(`skipped: ${path} is not there; put any EPW file of that name into it\n`);
  return null;
}

export const realWeatherNames = [
  'chicago-ohare-tmy3.epw',
  'new-york-central-park-tmy3.epw',
  'mannheim-try.epw',
] as const;
