import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { changedDesign } from './changed-design.js';
import type { Site } from './document/origin.js';
import { designOf, parseSite } from './load-site.js';
import { takenAs } from './taken-as.js';

const read = (name: string) => readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8');
const example = read('kettle-pond');
const withText = (from: string | RegExp, to: string) => parseSite(example.replace(from, to), 'site.yaml');
const site = parseSite(example, 'site.yaml');
const valuesOf = (design: Site) => Object.fromEntries(takenAs(design).map(({ key, value }) => [key, value]));

test('what the site file does not say is listed with the value that the design has, and its source', () => {
  expect(valuesOf(site.base)).toEqual({
    'generator.warmUp': '3 min',
    'generator.coolDown': '3 min',
    'generator.output.efficiency': '90 %',
    'generator.exercise': null,
    'generator.stop.fullEvery': null,
    'bank.stands': 'outdoors',
    'bank.cabinet.ventilation': '1 W/K',
  });
  expect(site.base.generator).toMatchObject({ warmUp: 3 / 60, coolDown: 3 / 60, output: { efficiency: 0.9 } });
  for (const { text, source } of takenAs(site.base)) {
    expect(text).toMatch(/\w+ (none|outdoors|[\d.]+ [\w/%]+)$/);
    expect(source.length).toBeGreaterThan(10);
  }
});

// EN 50272-2 on float: 0.05 x 12 cells x 5 mA/Ah x 1000 Ah / 1000 = 3 m3/h, at 1206 J/(m3 K) 1.005 W/K.
test('air through the cabinet is what the hydrogen of the bank on float needs', () => {
  const airOf = (bank: string) => withText('chemistry: flooded-lead-acid', bank).base.bank.cabinet!.ventilation;
  expect(airOf('chemistry: flooded-lead-acid')).toBeCloseTo((3 * 1206) / 3600, 12);
  expect(airOf('chemistry: agm')).toBeCloseTo((0.6 * 1206) / 3600, 12);
  expect(airOf('chemistry: lithium-iron-phosphate')).toBe(0);
});

test('a value that is written is not listed, though it be the usual one', () => {
  const written = withText('stop: { above: 80 % }', 'stop: { above: 80 %, fullEvery: 21 }\n  warmUp: 3 min');
  const values = valuesOf(written.base);
  expect(values).not.toHaveProperty(['generator.warmUp']);
  expect(values).not.toHaveProperty(['generator.stop.fullEvery']);
  expect(values).toHaveProperty(['generator.coolDown'], '3 min');
  expect(
    takenAs(parseSite(read('everything'), new URL('../../../examples/everything.yaml', import.meta.url).pathname).base),
  ).toEqual([]);
});

test('only what the design has is listed: no engine, no cabinet, rooms where somebody stands in them', () => {
  const bare = withText(/^ {2}more foam: .*$/m, '  no engine: { generator: null, bank: { cabinet: null } }');
  expect(valuesOf(designOf(bare, 'no engine'))).toEqual({
    'bank.stands': 'rooms',
    'rooms.atLeast': '18 degC',
    'rooms.above': '3 K',
  });
  const inUs = takenAs(designOf(bare, 'no engine'), 'us');
  expect(inUs.map(({ value }) => value)).toContain('64.4 degF');
  // 3 K are written as 5.4 degF in a site file; in a sentence that would be a temperature.
  expect(inUs.map(({ text }) => text)).toContain('rooms and huts above outdoors by 5.4 Fahrenheit degrees');
  expect(inUs.map(({ value }) => value)).toContain('5.4 degF');
});

test('variants and changed designs are asked for what they say themselves', () => {
  const variants = withText(/^ {2}more foam: .*$/m, '  slow: { generator: { coolDown: 5 min } }');
  expect(valuesOf(designOf(variants, 'slow'))).not.toHaveProperty(['generator.coolDown']);
  expect(valuesOf(variants.base)).toHaveProperty(['generator.coolDown']);
  const changed = changedDesign(site, { 'generator.warmUp': '1 min', 'bank.capacity': '500 Ah' });
  expect(valuesOf(changed)).not.toHaveProperty(['generator.warmUp']);
  expect(valuesOf(changed)).toHaveProperty(['bank.cabinet.ventilation'], '0.5 W/K');
});

test('a design changed in code has what is still as taken, and one built in code has nothing that a file left out', () => {
  const { base } = site;
  const changed = { ...base, generator: { ...base.generator!, coolDown: 0.5 } };
  expect(valuesOf(changed)).not.toHaveProperty(['generator.coolDown']);
  expect(valuesOf(changed)).toHaveProperty(['generator.warmUp']);
  expect(takenAs(structuredClone(base))).toEqual(takenAs(base));
  const { origin: _, ...built } = base;
  expect(takenAs(built)).toEqual([]);
});
