import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSite, type SiteFile } from '@wintergap/site';

/** Where the real weather files are from: latitude, longitude, UTC offset, elevation, as their headers say. */
const places: Record<string, readonly [number, number, number, number]> = {
  'chicago-ohare-tmy3.epw': [41.98, -87.92, -6, 201],
  'new-york-central-park-tmy3.epw': [40.78, -73.97, -5, 40],
  'mannheim-try.epw': [49.52, 8.55, 1, 96],
};

const file = join(import.meta.dirname, '../examples/kettle-pond.yaml');

/** The honey house of the examples, moved with its whole system to where a real weather file is from. */
export function honeyHouseAt(weatherPath: string, change: (text: string) => string = (text) => text): SiteFile {
  const name = weatherPath.split('/').at(-1)!;
  const [latitude, longitude, offset, elevation] = places[name]!;
  const text = readFileSync(file, 'utf8')
    .replace(
      /^place: .*$/m,
      `place: { latitude: ${latitude}, longitude: ${longitude}, elevation: ${elevation} m, utcOffset: ${offset} h }`,
    )
    .replace(/^weather: .*$/m, `weather: ${weatherPath}`);
  return parseSite(change(text), file);
}

/** The honey house with its own invented weather. */
export function honeyHouse(change: (text: string) => string = (text) => text): SiteFile {
  return parseSite(change(readFileSync(file, 'utf8')), file);
}
