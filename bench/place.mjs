// The place that is timed: the honey house of the examples under a real EPW file from the shared folder where there is one
// (see DEVELOPERS.md), else under the demo weather.
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

export const root = resolve(import.meta.dirname, '..');
const epw = join(process.env.WINTERGAP_SHARED ?? resolve(root, '../shared'), 'weather/chicago-ohare-tmy3.epw');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

export const weatherName = existsSync(epw) ? 'an EPW file' : 'the demo table (no EPW file found)';

/** A path for a file that goes when the bench ends. */
export const scratch = (name) => join(folder, name);

const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
const text = existsSync(epw)
  ? example
      .replace(/^weather: .*$/m, `weather: ${epw}`)
      .replace(/^place: .*$/m, 'place: { latitude: 41.98, longitude: -87.92, elevation: 201 m, utcOffset: -6 h }')
  : example.replace(/^weather: .*$/m, `weather: ${join(root, 'data-demo/kettle-pond.csv')}`);

/** Writes the site file under a name, with a section replaced by another. */
function written(name, changed) {
  writeFileSync(scratch(name), changed);
  return scratch(name);
}

export const siteFile = written('site.yaml', text);

/**
 * The same place with a sweep of so many designs: banks, and for each of them states of charge at which to start. Of each
 * there are fewer than the 5000 that one list of a site file may have.
 */
export function sweepFile(designs) {
  const starts = Math.min(designs, designs > 10_000 ? 50 : 10);
  const banks = designs / starts;
  const listed = (count, of) => `[${Array.from({ length: count }, (_, i) => of(i / count)).join(', ')}]`;
  const capacities = listed(banks, (share) => `${(600 + 900 * share).toFixed(2)} Ah`);
  const below = listed(starts, (share) => `${(40 + 20 * share).toFixed(1)} %`);
  const section = `sweep:\n  designs: { bank.capacity: ${capacities}, generator.start.below: ${below} }\n`;
  return written(`sweep-${designs}.yaml`, text.replace(/^sweep:\n( .*\n)*/m, section));
}
