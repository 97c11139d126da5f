import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { changedDesign } from '../changed-design.js';
import { inputFiles } from '../input-files.js';
import { parseSite } from '../load-site.js';
import { SiteError } from './site-problem.js';

const folder = mkdtempSync(join(tmpdir(), 'wintergap-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const example = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');
const sheet = /module:\n +\{[^}]*\}/;
const written = parseSite(example, join(folder, 'site.yaml'));

const modules = `name;vmp [V];imp [A];voc [V];isc [A];cells;power;powerPerK;vocPerK;iscPerK;noct;maker
# a comment
slab 300;32.5;9.24;39.9;9.82;60;300 W;-0.39 %;-0.31 %;0.05 %;45 degC;nobody

slab 400;31;12.9;37.2;13.7;54;;;;;;
`;

/** The example with its module and loads from tables. */
function withTables(tables: Record<string, string>, change: (text: string) => string = (text) => text) {
  for (const [name, content] of Object.entries(tables)) writeFileSync(join(folder, name), content);
  const text = example
    .replace('arrays:\n', 'modules: modules.csv\narrays:\n')
    .replace(sheet, 'module: slab 300')
    .replace('loads:\n', 'loads:\n  - { list: appliances.csv }\n');
  return parseSite(change(text), join(folder, 'site.yaml'));
}

const problems = (read: () => unknown): string => {
  try {
    read();
    return '';
  } catch (error) {
    if (error instanceof SiteError) return error.message;
    throw error;
  }
};

const appliances = `name,power,bus,runs,hours,season,dark,count
cellar fan,20 W,dc,50 %,"6-8, 16-23",05-01 to 09-30,,2
porch light,10 W,dc,,,,yes,
`;

test('a module by its name is the sheet written out, units in the heading or in the cells', () => {
  const site = withTables({ 'modules.csv': modules, 'appliances.csv': appliances });
  expect(site.base.arrays[0]!.module).toEqual(written.base.arrays[0]!.module);
  expect(changedDesign(site, { 'arrays.0.module': 'slab 400' }).arrays[0]!.module).toMatchObject({
    imp: 12.9,
    cells: 54,
  });
  expect([...inputFiles(site)]).toContain(join(folder, 'modules.csv'));
  expect([...inputFiles(site)]).toContain(join(folder, 'appliances.csv'));
});

test('appliances stand among the loads as if they were written there, and variants change them by name', () => {
  const site = withTables({ 'modules.csv': modules, 'appliances.csv': appliances }, (text) =>
    text.replace(
      /^ {2}more foam: .*$/m,
      '  dark porch: { loads: [{ name: porch light, remove: true }, { name: cellar fan, power: 30 W }] }',
    ),
  );
  const [fan, light, ...others] = site.base.loads;
  expect(fan).toMatchObject({ name: 'cellar fan', power: 20, count: 2, runs: 0.5 });
  expect(fan!.when).toMatchObject({
    hours: [
      [6, 8],
      [16, 23],
    ],
    season: [{ from: 120, to: 272 }],
  });
  expect(light!.when.dark).toBe(true);
  expect(others).toEqual(written.base.loads);
  const porch = site.variants.get('dark porch')!.loads;
  expect(porch.map(({ name }) => name)).not.toContain('porch light');
  expect(porch[0]).toMatchObject({ name: 'cellar fan', power: 30, count: 2 });
});

test('what is wrong in a table is told with its line and column, and the key', () => {
  const right = { 'modules.csv': modules, 'appliances.csv': appliances };
  const told = (tables: Record<string, string>, change?: (text: string) => string) =>
    problems(() => withTables({ ...right, ...tables }, change));
  expect(told({ 'modules.csv': modules.replace('vmp [V]', 'vnp [V]') })).toMatch(
    /^modules\.csv:1:2: unknown column "vnp"; did you mean "vmp"\? Known here: name, power, vmp/m,
  );
  expect(told({ 'modules.csv': modules.replace(';32.5;', ';3250;') })).toBe(
    'modules.csv:3:2: slab 300.vmp: found 3250 V, expected 0.1 V to 1000 V',
  );
  expect(told({ 'modules.csv': modules.replace(';32.5;', ';32,5;') })).toContain(
    'modules.csv:3:2: slab 300.vmp: 32,5 V has a comma in the number',
  );
  expect(told({ 'modules.csv': modules.replace('voc [V]', 'voc') })).toMatch(
    /^modules\.csv:3:4: slab 300\.voc: 39\.9 has no unit; write 39\.9 V/m,
  );
  expect(told({ 'modules.csv': modules.replace('slab 400', 'slab 300') })).toContain(
    'modules.csv:5:1: name: "slab 300" is there twice, first on line 3',
  );
  expect(told({ 'appliances.csv': appliances.replace('20 W', '20 Wat') })).toContain(
    'appliances.csv:2:2: cellar fan.power: 20 Wat has the unknown unit Wat, meaning watt?; write 20 W',
  );
  expect(told({ 'appliances.csv': appliances.replace('05-01 to', '05/01 to') })).toMatch(
    /appliances\.csv:2:6: cellar fan\.when/,
  );
  expect(told({ 'appliances.csv': '' })).toContain('appliances.csv:1:1: empty, expected headings: name, power');
});

test('a name that no table has, and a table that is not there, are told in the site file or by its name', () => {
  const right = { 'modules.csv': modules, 'appliances.csv': appliances };
  const named = (name: string) =>
    problems(() => withTables(right, (text) => text.replace('module: slab 300', `module: ${name}`)));
  expect(named('slap 300')).toMatch(
    /site\.yaml:\d+:\d+: arrays\[0\]\.module: no module is called "slap 300"; did you mean "slab 300"\? There are slab 300, slab 400/,
  );
  expect(
    problems(() => withTables(right, (text) => text.replace('modules: modules.csv', 'modules: parts.csv'))),
  ).toContain('parts.csv: no such file; it is looked for at');
  expect(problems(() => parseSite(example.replace(sheet, 'module: slab 300'), 'site.yaml'))).toMatch(
    /arrays\[0\]\.module: found "slab 300", expected the keys of a data sheet, or beside arrays: modules: FILE\.csv/,
  );
});
