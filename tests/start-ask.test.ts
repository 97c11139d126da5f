import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadSite, parseSite } from '@wintergap/site';
import { exceededLimits, siteLimits } from '@wintergap/year';
import { afterAll, expect, test } from 'vitest';
import { askSite } from '../packages/cli/src/ask/ask-site.js';
import { siteText } from '../packages/cli/src/ask/site-text.js';
import { program } from './built-program.js';

const folder = mkdtempSync(join(tmpdir(), 'wintergap-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What the questions make of a list of answers, and all that was said meanwhile. */
async function asked(answers: readonly string[]) {
  const left = [...answers];
  const said: string[] = [];
  const asker = {
    ask: async (question: string) => {
      said.push(question);
      return left.shift() ?? null;
    },
    say: (text: string) => void said.push(text),
    close: () => {},
  };
  const text = siteText(await askSite(asker), 'a place', folder);
  return { text, site: parseSite(text, join(folder, 'site.yaml')), said: said.join('\n'), left };
}

/** Answers of people in four places, by what is remarkable in them. */
const people: Record<string, string[]> = {
  'a roof cabin on lithium without an engine': [
    'metric',
    '61.5 N, 9.2 E, 650 m',
    '',
    'guess',
    '3, 4, 5, radio beacon 40 Wh',
    '900 W, fixed',
    'lithium, 4 kWh',
    'none',
  ],
  'lead-acid in the far north': [
    '',
    "69°36' N, 18.9, 120 m",
    '1',
    '',
    '1, 3-6, 11',
    'pole, 3.2 kW',
    'flooded, 900 Ah',
    '4 kW, diesel',
  ],
  'a house in the south': [
    'metric',
    '44.9 S, 168.1 E, 400 m',
    '+12',
    'means',
    '7 6 4.6 2.9 1.8 1.4 1.6 2.5 3.8 5.2 6.4 7.1',
    '16 16 14 11 8 5 4 6 9 11 13 15',
    '1-6',
    '2 kW, seasonal',
    'agm, 10 kWh',
    '3 kW',
  ],
  'a farm in US units at the demo place': ['us', '', '', '', '1-8, 10, 12', '6 kW', 'gel, 48 kWh', '8 kW, diesel'],
  'a hut of which nothing is known': ['', '', '', '', '', '', '', ''],
  'a radio': ['', '40, 20', '', '', 'radio 60 Wh', '50 W', 'agm, 40 Ah', 'none'],
};

test.each(Object.entries(people))('%s: the file is right, within all limits, and as answered', async (_, answers) => {
  const { site, left, text } = await asked(answers);
  expect(left).toEqual([]);
  expect(text).not.toMatch(/NaN|undefined|Infinity/);
  const demo = 'file' in site.base.weather;
  // The demo's weather is written beside the file by the program.
  const weather = demo ? { weather: loadSite('examples/kettle-pond.yaml').base.weather } : {};
  for (const design of [site.base, ...site.variants.values()]) {
    expect(exceededLimits(siteLimits({ ...design, ...weather }))).toEqual([]);
  }
});

test('the answers stand in the file', async () => {
  const north = (await asked(people['lead-acid in the far north']!)).site.base;
  expect(north.place).toMatchObject({ latitude: 69.6, longitude: 18.9, elevation: 120, utcOffset: 1 });
  expect(north.arrays.map(({ mount }) => mount.kind)).toEqual(['pole', 'pole']);
  expect(north.arrays.reduce((sum, { inSeries, strings }) => sum + inSeries * strings * 400, 0)).toBe(3200);
  expect(north.bank).toMatchObject({ chemistry: 'flooded-lead-acid', capacity: 900, voltage: 24 });
  expect(north.generator).toMatchObject({ output: { power: 4000 }, fuel: { kind: 'diesel' } });
  const south = (await asked(people['a house in the south']!)).site.base;
  expect(south.arrays[0]!.mount).toMatchObject({ kind: 'seasonal', azimuth: 0 });
  expect(south.weather).toMatchObject({ months: { air: [16, 16, 14, 11, 8, 5, 4, 6, 9, 11, 13, 15] } });
  const roof = (await asked(people['a roof cabin on lithium without an engine']!)).site.base;
  expect(roof.generator).toBeUndefined();
  expect(roof.loads.map(({ name }) => name)).toContain('radio beacon');
  expect((await asked(people['a farm in US units at the demo place']!)).text).toContain('elevation: 1410 ft');
});

test('a wrong answer is told with what is expected, and asked for again', async () => {
  const { said, site } = await asked([
    'imperial',
    'us',
    '460, 10',
    '46.9',
    '46.9, -92.2, 1410 ft',
    '25',
    '',
    'no-such-file.epw',
    'demo',
    '1-40',
    '1, 3',
    '500, fixed',
    '500 W, sideways',
    '500 W, fixed',
    'lithium, 3 kWhh',
    'lithium, 3 kWh',
    'none',
  ]);
  for (const told of [
    'found "imperial", expected one of metric, us',
    'found "460", expected degrees from -90 to 90',
    'found "46.9", expected latitude, longitude and elevation',
    'found "25", expected hours from -12 to 14',
    'no-such-file.epw',
    'found "1-40", expected numbers of the list, 1 to 12',
    '500 has no unit; write 500 W',
    'found "sideways", expected one of fixed, seasonal, pole',
    '3 kWhh has the unknown unit kWhh, meaning kWh?; write 3 kWh',
  ]) {
    expect(said).toContain(told);
  }
  expect(site.base.units).toBe('us');
});

function start(place: string, input: string) {
  const args = [program, 'start', join(folder, place), '--ask'];
  return spawnSync(process.execPath, args, { encoding: 'utf8', input, cwd: folder });
}

test('answers from a pipe make a place; when they end too early nothing is written', () => {
  const { status, stdout, stderr } = start('north', `${people['lead-acid in the far north']!.join('\n')}\n`);
  expect(status).toBe(0);
  expect(stdout).toContain('Next: wintergap year');
  expect(stderr.match(/\[.*\]:/g)).toHaveLength(8);
  expect(readFileSync(join(folder, 'north/site.yaml'), 'utf8')).toContain('latitude: 69.6');
  expect(readdirSync(join(folder, 'north'))).toEqual(['site.yaml', 'wintergap.schema.json']);
  const short = start('short', 'metric\n');
  expect(short.status).toBe(2);
  expect(short.stderr).toContain('the answers ended at "2  Latitude');
  expect(existsSync(join(folder, 'short'))).toBe(false);
});
