import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { carrySection, readCosts } from '@wintergap/seasonal';
import { buildSite, readSection, type SiteFile, type SiteInput } from '@wintergap/site';
import { designCount, planSweep, readSize, wholeSweep } from '@wintergap/study';
import { siteWeatherYears } from '@wintergap/year';
import { afterAll, expect, test } from 'vitest';
import { parse } from 'yaml';

type Mapping = Record<string, unknown>;

const root = join(import.meta.dirname, '..');
const text = (page: string) => readFileSync(join(root, page), 'utf8');
const page = text('docs/site-file.md');

// The files that the fragments name, made of the demo's.
const folder = mkdtempSync(join(tmpdir(), 'wintergap-page-'));
afterAll(() => rmSync(folder, { recursive: true }));
const table = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8');
mkdirSync(join(folder, 'power'));
for (const year of [2008, 2009, 2010]) {
  const real = table.replace(/^# kind.*\n/m, '').replaceAll('2023-', `${year}-`);
  for (const name of [`ridge-${year}.csv`, `power/${year}.csv`]) writeFileSync(join(folder, name), real);
}
copyFileSync(join(root, 'data-demo/kettle-pond.csv'), join(folder, 'kettle-pond.csv'));
copyFileSync(join(root, 'examples/far-ridge-appliances.csv'), join(folder, 'appliances.csv'));
const [, modules] = /```csv\n([\s\S]*?)```/.exec(page)!;
writeFileSync(
  join(folder, 'modules.csv'),
  `${modules}${/^slab 400.*$/m.exec(modules!)![0].replace('slab 400', 'slab 300')}\n`,
);

/** A fragment as it would be typed: without the stars of what must be there, and lists of twelve written out. */
const typed = (fragment: string): string =>
  fragment
    .replace(/ \*(?=[\s,}]|$)/gm, '')
    .replace(/\[([^[\]]+), \.\.\.twelve\]/g, (_, first: string) => `[${twelveOf(first.split(', ')).join(', ')}]`);

const twelveOf = (first: string[]): string[] => Array.from({ length: 12 }, (_, i) => first[i] ?? first.at(-1)!);

/** The fragments of a page: each key at the margin of its blocks with what belongs to it. */
const fragmentsOf = (markdown: string): Mapping[] =>
  [...markdown.matchAll(/```yaml\n([\s\S]*?)```/g)].flatMap(([, block]) =>
    typed(block!)
      .split(/^(?=\w)/m)
      .filter((part) => part.trim() !== '')
      .map((part) => parse(part) as Mapping),
  );

const fragments = fragmentsOf(page);
/** The page's own site: the first fragment of each of its keys. */
const keysOfPage = [
  'name',
  'place',
  'weather',
  'ground',
  'skyline',
  'horizon',
  'leaves',
  'snow',
  'sky',
  'rooms',
].concat(
  ['calendarYear', 'units', 'arrays', 'bank', 'inverter', 'converter', 'loads', 'measuredLoad', 'events'],
  ['generator', 'variants', 'costs'],
);
const whole: Mapping = Object.assign(
  {},
  ...fragments.toReversed().filter((part) => keysOfPage.includes(Object.keys(part)[0]!)),
);

/** The sections that commands read. */
const sections: Mapping = Object.assign({}, ...fragmentsOf(text('packages/study/README.md')));

const built = (changes: Mapping): SiteFile => buildSite({ ...structuredClone(whole), ...changes } as SiteInput, folder);

test('the fragments of the page make one whole site', () => {
  expect(Object.keys(whole).sort()).toEqual(keysOfPage.sort());
  expect([...built({}).variants.keys()]).toEqual(['fixed', 'no freezer', 'no engine']);
});

test.each(fragments.map((fragment) => [Object.keys(fragment)[0]!, fragment] as const))(
  'a fragment of %s is accepted in it',
  (key, fragment) => {
    // What stands deeper than the margin belongs to the bank.
    const change = keysOfPage.includes(key)
      ? fragment
      : { bank: { ...(whole.bank as Mapping), ...fragment, atRate: undefined } };
    const site = built(JSON.parse(JSON.stringify(change)));
    if (key === 'costs') expect(readCosts(site)).toMatchObject({ years: 20, discountRate: 0.03 });
  },
);

test.each(['{ years: "ridge-*.csv", leaveOut: [2009] }', '{ years: power }'])(
  'weather: %s finds its years',
  (weather) => {
    expect(`${page}${text('docs/your-own-weather.md')}`).toContain(`weather: ${weather}`);
    const years = siteWeatherYears(built({ weather: parse(weather) }).base);
    expect(years).toHaveLength(weather.includes('leaveOut') ? 2 : 3);
  },
);

/** Where what the text names in passing would stand. */
const inPassing: Record<string, readonly string[]> = {
  weather: ['accepted: true'],
  snow: ['onArray: false'],
  '': ['modules: modules.csv'],
  rooms: ['{ atLeast: 18 degC, above: 3 K }'],
  'arrays.0': ['module: slab 400'],
  'arrays.0.mount': [
    'maxTilt: 75',
    'drive: 8 W',
    'stowAbove: 18 m/s',
    'stuck: [{ from: 11-20, to: 12-24, azimuth: 140 }]',
  ],
  'arrays.0.losses': ['glass: false'],
  'arrays.0.controller.efficiency': ['{ at: [5 %, 20 %, 100 %], is: [90 %, 97 %, 96 %] }'],
  bank: ['floor: -20 %'],
  'bank.cabinet.heatedBy': [
    '{ kind: heater, power: 60 W, keepAbove: 3 degC }',
    '{ kind: room, temperature: 18 degC, coupling: 2 W/K }',
  ],
  'loads.0': ['off: { from: 12-20, to: 01-05 }'],
  'loads.1.when': ['guests: [{ from: 07-01, to: 07-14, times: 1.5 }]'],
  loads: ['- { list: appliances.csv }'],
  generator: ['lives: 2000 h'],
  'generator.start': [
    'voltageBelow: 23.6 V',
    'heldFor: 15 min',
    'byHand: { below: 55 %, at: [8, 18] }',
    'endsRun: false',
    'beforeDullDay: { below: 60 %, dullBelow: 0.8 kWh/m2, forecast: persistence }',
  ],
  'generator.stop': ['atBulkEnd: true', 'fullEvery: 14'],
  size: ['least: cost'],
  'sweep.designs': ['arrays.garden pole.module: [slab 300, slab 400]'],
  'variants.other': ['bank: { float: null }', 'generator: { start: { below: null, voltageBelow: 23.6 V } }'],
};

/** What a fragment comes to where the page's own site has something that excludes it. */
const instead: Record<string, Mapping> = { weather: { file: 'kettle-pond.csv' }, snow: {} };

/** The page's site with what stands at a path merged, added to a list, or another value. */
function placed(path: string, fragments: readonly string[]): SiteFile {
  const site = structuredClone({ ...whole, ...sections, modules: 'modules.csv' }) as Mapping;
  const keys = path.split('.').filter((key) => key !== '');
  let at: Mapping = site;
  for (const key of keys.slice(0, -1)) at = at[key] as Mapping;
  const last = keys.at(-1);
  for (const fragment of fragments) {
    const value = parse(fragment) as Mapping;
    if (last === undefined) Object.assign(at, value);
    else if (fragment.startsWith('{')) at[last] = value;
    else if (fragment.startsWith('-')) (at[last] as unknown[]).push(...(value as unknown as unknown[]));
    else at[last] = { ...(instead[path] ?? (at[last] as Mapping)), ...value };
  }
  return buildSite(site as SiteInput, folder);
}

test.each(Object.entries(inPassing))('at "%s" is accepted what the text names in passing', (path, fragments) => {
  const choices = fragments[0]!.startsWith('{') ? fragments.map((one) => [one]) : [fragments];
  for (const choice of choices) {
    const site = placed(path, choice);
    if (path === 'size') expect(readSize(site).least).toBe('cost');
    if (path === 'sweep.designs') expect(planSweep(site, wholeSweep).axes.length).toBeGreaterThan(0);
  }
});

test('nothing that the text names in passing is left out', () => {
  const prose = page.replace(/```[\s\S]*?```/g, '').replace(/\s+/g, ' ');
  const named = prose.split('`').filter((code, i) => i % 2 === 1 && /^[^#]*: /.test(code));
  expect(named.length).toBeGreaterThan(20);
  expect(named.sort()).toEqual(Object.values(inPassing).flat().sort());
});

test('what READMEs say of sections is read', () => {
  expect(designCount(planSweep(built(sections), wholeSweep).order)).toBe(20);
  expect(readSize(built(sections))).toMatchObject({ least: 'array' });
  const [carry, costs] = fragmentsOf(text('packages/seasonal/README.md'));
  expect(readSection(built(carry!), 'carry', carrySection)).toMatchObject({ store: 'hydrogen', largestArray: 16 });
  expect(readCosts(built(costs!))).toMatchObject({ years: 20 });
});
