import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changedDesign } from './changed-design.js';
import { SiteError } from './document/site-problem.js';
import { siteJsonSchema } from './editor/json-schema.js';
import { designOf, loadSite, parseSite } from './load-site.js';

const example = readFileSync(new URL('../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');

/** The problems of a site file, as printed; empty when there are none. */
function problemsOf(text: string): string[] {
  try {
    parseSite(text, 'site.yaml');
    return [];
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    return error.message.split('\n');
  }
}

const lineOf = (text: string, part: string) => text.slice(0, text.indexOf(part)).split('\n').length;

test('the example is right, and its variants differ where they say', () => {
  const site = parseSite(example, 'site.yaml');
  expect(site.base.arrays[0]!.mount.kind).toBe('pole');
  expect(designOf(site, 'fixed').arrays[0]!.mount).toEqual({ kind: 'fixed', tilt: 60, azimuth: 180 });
  expect(designOf(site, 'taller pole').arrays[0]!.height).toBe(7);
  expect(designOf(site, 'taller pole').arrays[0]!.mount).toEqual(site.base.arrays[0]!.mount);
});

test('every problem is reported at once, each where it stands', () => {
  const text = example
    .replace('height: 4 m', 'height: 4')
    .replace('voc: 39.9 V', 'vocc: 39.9 V')
    .replace('floor: 30 %', 'floor: 130 %')
    .replace('height: 7 m', 'height: 7 W');
  const problems = problemsOf(text);
  const at = (part: string) => `site.yaml:${lineOf(text, part)}:`;
  expect(problems).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/arrays\[0\]\.height: 4 has no unit; write 4 m or 13\.12 ft/),
      expect.stringMatching(/unknown key "vocc"; did you mean "voc"\?/),
      expect.stringMatching(/bank\.floor: found 130 %, expected -50 % to 95 %/),
      expect.stringMatching(/variants\.taller pole\.arrays\[0\]\.height: 7 W is a power, but a length is needed/),
    ]),
  );
  expect(problems.find((line) => line.includes('has no unit'))).toContain(at('height: 4'));
  expect(problems.find((line) => line.includes('bank.floor'))).toContain(at('floor: 130'));
  expect(problems.find((line) => line.includes('7 W is'))).toContain(at('taller pole'));
});

test('a slip in the name of a key is one problem, told at the key', () => {
  const slips: [right: string, wrong: string, told: RegExp][] = [
    [
      '  chemistry:',
      '  chemistri:',
      /bank.chemistry: unknown key "chemistri"; did you mean "chemistry"\? It is one of floo/,
    ],
    ['\nbank:', '\nbanc:', /unknown key "banc"; did you mean "bank"\?/],
    ['power: 90 W', 'powr: 90 W', /loads\[0\]: unknown key "powr"; did you mean "power"\?/],
    ['  fuel: { kind', '  fuel: { kinds', /generator.fuel: unknown key "kinds"; did you mean "kind"\?/],
  ];
  for (const [right, wrong, told] of slips) {
    expect(example).toContain(right);
    const text = example.replace(right, wrong);
    const problems = problemsOf(text);
    expect(problems).toEqual([expect.stringMatching(told)]);
    // A key that tells kinds apart is told with its mapping, a line above.
    const line = lineOf(text, wrong.trim()) - (wrong.includes('chemistri') ? 1 : 0);
    expect(problems[0]).toContain(`site.yaml:${line}:`);
  }
});

test('a key that is missing altogether is told as nothing', () => {
  const problems = problemsOf(example.replace(/^ {2}chemistry: .*\n/m, '').replace('power: 90 W, ', ''));
  expect(problems.join('\n')).toMatch(/bank.chemistry: chemistry is nothing, expected one of/);
  expect(problems.join('\n')).toMatch(/loads\[0\]\.power: found nothing, expected a power with its unit/);
});

test.each([
  ['vmp: 32.5 V', 'vmp: 42.5 V', /vmp: found 42.5 V, expected less than voc/],
  ['power: 300 W, vmp', 'power: 350 W, vmp', /vmp x imp is 300 W/],
  ['start: { below: 45 %', 'start: { below: 85 %', /stop\.above: found 80 %, expected more than the 85 %/],
  ['start: { below: 45 %', 'start: { below: 20 %', /starts below 20 %, but the bank's floor is 30 %/],
  ['kind: petrol', 'kind: gasoline', /found "gasoline", expected one of petrol, diesel, propane/],
  ['between: [8, 20]', 'between: [8, 26]', /from 0 to 24/],
  ['from: 10-01', 'from: 02-30', /expected a date as MM-DD/],
  ['latitude: 46.9', 'latitude: 146.9', /from -90 to 90/],
  ['name: refrigerator', 'name: freezer', /"freezer" is there twice/],
  ['inverter: {', 'invertor: {', /unknown key "invertor"; did you mean "inverter"\?/],
  ['size: 6 AWG', 'size: 6 V', /conductor size/],
  ['chemistry: flooded-lead-acid', 'chemistry: lead', /expected one of flooded-lead-acid, agm, gel/],
  ['  chemistry: flooded-lead-acid', '  chemistry: [', /not readable as YAML/],
])('%s written as %s is explained', (right, wrong, message) => {
  expect(example).toContain(right);
  expect(problemsOf(example.replace(right, wrong)).join('\n')).toMatch(message);
});

// Of 12 cells: 2.1 to 2.8 V each, so 25.2 to 33.6 V; the usual absorption of flooded cells is 2.4 V, 28.8 V.
test('every set point of a bank that its cells cannot have is told at once, with its line', () => {
  const bank = (keys: string) => example.replace('  floor: 30 %', `  floor: 30 %\n${keys}`);
  const text = bank('  absorption: 36 V\n  float: 20 V\n  tailCurrent: 300 A\n  compensation: -0.15 V/K');
  const problems = problemsOf(text);
  for (const [key, message] of [
    ['absorption: 36', 'bank.absorption: found 36 V, expected 25.2 V to 33.6 V: 2.1 to 2.8 V for each of 12 cells'],
    ['float: 20', 'bank.float: found 20 V, expected 25.2 V to 33.6 V'],
    ['tailCurrent:', 'bank.tailCurrent: found 300 A, expected 0 A to 200 A'],
    ['compensation:', 'bank.compensation: found -0.15 V/K, expected -0.12 V/K to 0'],
  ] as const) {
    expect(problems.find((line) => line.includes(message))).toContain(`site.yaml:${lineOf(text, key)}:`);
  }
  expect(problems).toHaveLength(4);
  expect(problemsOf(bank('  float: 29 V')).join()).toContain(
    'bank.float: found 29 V, expected no more than the absorption voltage, 28.8 V, which is usual',
  );
  expect(problemsOf(bank('  absorption: 30 V\n  equalise: { voltage: 29 V, every: 30 }')).join()).toContain(
    'bank.equalise.voltage: found 29 V, expected no less than the absorption voltage, 30 V',
  );
  expect(problemsOf(bank('  absorption: 29 V\n  float: 27 V\n  tailCurrent: 15 A'))).toEqual([]);
  expect(problemsOf(example.replace('voltage: 24 V', 'voltage: 25 V')).join()).toContain(
    'bank.voltage: found 25 V, expected a multiple of the 2 V of one cell, such as 26 V',
  );
  expect(
    problemsOf(
      example
        .replace('capacity: 1000 Ah', 'capacity: [{ gives: 1000 Ah, in: 20 h }, { gives: 900 Ah, in: 100 h }]')
        .replace('  atRate: 20 h\n', ''),
    ).join(),
  ).toMatch(/bank.capacity: .*at 100 h must be/);
  expect(problemsOf(bank('  cycleLife: [{ depth: 80 %, cycles: 700 }, { depth: 20 %, cycles: 3000 }]')).join()).toMatch(
    /bank.cycleLife: .* from shallow to deep/,
  );
});

// A trade's word, or a slip, must never be answered with another thing: lifepo4 is no gel, a PWM controller no MPPT.
test.each([
  ['flooded-lead-acid', 'LiFePO4', /"LiFePO4" is written lithium-iron-phosphate here/],
  ['flooded-lead-acid', 'LFP', /is written lithium-iron-phosphate here/],
  ['flooded-lead-acid', 'VRLA', /is written agm or gel here/],
  ['flooded-lead-acid', 'nickel-iron', /expected one of flooded-lead-acid, agm, gel, lithium-iron-phosphate$/m],
  ['kind: maximum-power', 'kind: mppt', /"mppt" is written maximum-power here/],
  ['kind: maximum-power', 'kind: PWM', /"PWM" is written direct here/],
  ['kind: petrol', 'kind: gasoline', /"gasoline" is written petrol here/],
  ['kind: petrol', 'kind: LPG', /"LPG" is written propane here/],
  ['kind: pole', 'kind: tracker', /"tracker" is written pole or one-axis or two-axis here/],
  ['latitude: 46.9', 'latitude: 46,9', /found the number "9" where a key is expected: in braces a comma ends/],
  ['height: 4 m', 'height: 4,5 m', /write 4\.5 m/],
  ['strings: 3', 'strings: 3,5', /decimals take a point: 3\.5/],
  ['atRate: 20 h', 'discharge: 20 h', /unknown key "discharge"; Known here/],
  ['capacity: 1000 Ah', 'capacity: 24 V', /a charge is needed here, such as 1000 Ah/],
])('%s written as %s is told what it is called, or what there is', (right, wrong, message) => {
  expect(example).toContain(right);
  expect(problemsOf(example.replace(right, wrong)).join('\n')).toMatch(message);
});

// 24 kWh / 24 V = 1000 Ah.
test('a bank may be given in kWh, which are counted at its nominal voltage', () => {
  const of = (capacity: string, text = example) =>
    parseSite(text.replace('capacity: 1000 Ah', `capacity: ${capacity}`), 'site.yaml').base.bank.capacity;
  expect(of('24 kWh')).toBe(1000);
  expect(of('24000 Wh')).toBe(of('1000 Ah'));
  const lithium = example.replace('chemistry: flooded-lead-acid', 'chemistry: lithium-iron-phosphate');
  expect(of('12 kWh', lithium.replace('voltage: 24 V', 'voltage: 25.6 V'))).toBeCloseTo(468.75, 9);
  expect(problemsOf(example.replace('capacity: 1000 Ah', 'capacity: 2 Wh')).join()).toMatch(
    /bank\.capacity: found 2 Wh, 0\.08333 Ah at 24 V, expected 1 Ah to 1000000 Ah/,
  );
});

test('an azimuth may be a point of the compass', () => {
  const facing = (word: string) => {
    const text = example.replace('tilt: 60, azimuth: 180', `tilt: 60, azimuth: ${word}`);
    const { mount } = designOf(parseSite(text, 'site.yaml'), 'fixed').arrays[0]!;
    return mount.kind === 'fixed' ? mount.azimuth : null;
  };
  expect(['south', 'SE', 'south-west', 'north', 'SSW', '180'].map(facing)).toEqual([180, 135, 225, 0, 202.5, 180]);
  expect(() => facing('up')).toThrow(/found "up", expected an azimuth in degrees/);
});

test('a variant takes any optional key away, whether or not the base has it', () => {
  const variant = (changes: string, base = example) =>
    designOf(parseSite(base.replace(/^variants:\n/m, `variants:\n  less: ${changes}\n`), 'site.yaml'), 'less');
  const floating = example.replace('  floor: 30 %', '  floor: 30 %\n  float: 27 V');
  expect(parseSite(floating, 'site.yaml').base.bank.float).toBe(27);
  for (const base of [example, floating]) expect(variant('{ bank: { float: null } }', base).bank.float).toBeUndefined();
  const lithium = '{ bank: { chemistry: lithium-iron-phosphate, voltage: 25.6 V, floor: null, float: null } }';
  expect(variant(lithium, floating).bank).toMatchObject({ chemistry: 'lithium-iron-phosphate', capacity: 1000 });
  expect(variant('{ arrays: [{ name: garden pole, cable: null, losses: null }] }').arrays[0]!.cable).toBeUndefined();
  expect(variant('{ horizon: null, rooms: { above: null } }').rooms.above).toBe(3);
});

test('an empty file, a list or a text is told what a site file looks like', () => {
  for (const text of ['', '- a\n- b', 'hello']) expect(problemsOf(text).join()).toMatch(/expected keys such as name:/);
});

test('a value changed by its path is the same as one written in the file', () => {
  const site = parseSite(example, 'site.yaml');
  const changed = changedDesign(site, { 'arrays.garden pole.strings': 5, 'bank.capacity': '500 Ah' });
  const written = parseSite(example.replace('strings: 3', 'strings: 5').replace('1000 Ah', '500 Ah'), 'site.yaml');
  const { origin: _, ...values } = written.base;
  expect({ ...changed, origin: null }).toEqual({ ...values, origin: null });
  expect(() => changedDesign(site, { 'arrays.9.strings': 5 })).toThrow(/"9" leads nowhere/);
  expect(() => changedDesign(site, { 'bank.capacity': 500 })).toThrow(/500 has no unit/);
});

test('any damage to the file gives a message, never a crash', () => {
  fc.assert(
    fc.property(
      fc.nat(example.length - 1),
      fc.nat(30),
      fc.constantFrom('', ':', '{', '[', '- ', '"', '\t', '%', '-1', '1e999', 'null', '&a', '*a', '\n'),
      (at, cut, put) => {
        // problemsOf lets anything but a SiteError through.
        expect(problemsOf(example.slice(0, at) + put + example.slice(at + cut))).toBeInstanceOf(Array);
      },
    ),
    { numRuns: 300 },
  );
});

test('the schema for editors names the keys', () => {
  const schema = JSON.stringify(siteJsonSchema());
  for (const key of ['latitude', 'absorptionTime', 'stowAbove', 'beforeDullDay']) expect(schema).toContain(`"${key}"`);
});

test('a clock that no place has is found, and the mistyped sign suggested', () => {
  const east = problemsOf(example.replace('longitude: -92.2', 'longitude: 92.2')).join();
  expect(east).toMatch(/did you mean longitude -92\.2\?/);
  expect(problemsOf(example.replace('utcOffset: -6 h', 'utcOffset: 9 h')).join()).toMatch(
    /place\.utcOffset: found 9 h/,
  );
});

test('a variant that names an item wrongly is told the nearest name', () => {
  const text = example.replace('name: garden pole, height: 7 m', 'name: gardn pole, height: 7 m');
  expect(problemsOf(text).join()).toMatch(/arrays has no item called "gardn pole"; did you mean "garden pole"\?/);
});

test('a weather file in place of a site file is told apart', () => {
  expect(problemsOf('LOCATION,Somewhere,XX,YYY,TMY3,1,41,-87,-6,201\n1,2,3').join()).toMatch(/found a weather file/);
  expect(problemsOf('PK\u0003\u0000\u0000data').join()).toMatch(/found a weather file or data/);
});

test('a bank may have two points of its label, of which the first is what 100 % means', () => {
  const label = 'capacity: [{ gives: 1000 Ah, in: 20 h }, { gives: 1200 Ah, in: 100 h }]';
  const plain = /capacity: 1000 Ah\n {2}atRate: 20 h/;
  const { bank } = parseSite(example.replace(plain, label), 'site.yaml').base;
  expect(bank).toMatchObject({ capacity: 1000, atRate: 20, otherLabel: { capacityAh: 1200, atRateH: 100 } });
  const said = (capacity: string) => problemsOf(example.replace(plain, capacity)).join('\n');
  expect(said(`${label}\n  atRate: 20 h`)).toMatch(/bank\.atRate: found beside two points of the label/);
  expect(said('capacity: [{ gives: 1000 Ah, in: 20 h }]')).toMatch(/bank\.capacity: expected a capacity such as/);
  expect(said('capacity: [{ gives: 1000, in: 20 h }, { gives: 1200 Ah, in: 100 h }]')).toMatch(/1000 has no unit/);
});

test('no tilt is steeper than its mount can be set', () => {
  const tooSteep = example.replace('mount: { kind: pole, turn: 220,', 'mount: { kind: pole, turn: 220, maxTilt: 60,');
  expect(() => parseSite(tooSteep, 'site.yaml')).toThrow(
    /arrays\[0\]\.mount\.tilts\[0\]\.tilt: found 68, expected no more than the mount can do, maxTilt 60/,
  );
});

test.each([
  ['a value that holds itself', 'a: &x [*x]', 'site.yaml:1:8: the alias *x stands within the value it names'],
  ['braces', `a: ${'{a: '.repeat(2000)}1${'}'.repeat(2000)}`, 'found values nested more than 30 deep'],
  ['indentation', Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:`).join('\n'), 'nested more than 30 deep'],
  ['30 lists', `a: ${'['.repeat(31)}${']'.repeat(31)}`, /^site\.yaml:1:33: found values nested/],
  ['a prototype', 'name: x\n__proto__: { name: y }', 'site.yaml:2:1: found the key "__proto__"'],
  ['a variant of that name', 'variants:\n  __proto__: {}', 'site.yaml:2:3: found the key "__proto__"'],
  ['a key twice', 'name: x\nbank: { floor: 1, floor: 2 }', 'site.yaml:2:19: the key "floor" is there twice'],
  ['20,000 keys', Array.from({ length: 20_000 }, (_, i) => `key${i}: 1`).join('\n'), 'found 20000 items in one list'],
])('YAML that is no site file is told with its place: %s', (_, text, message) => {
  expect(problemsOf(text).join('\n')).toMatch(message);
});

test('an alias to what stands elsewhere is read', () => {
  const twice = example.replace('module:', 'module: &sheet').replace(/voc: [\d.]+ V/, 'voc: 39.9 V');
  expect(problemsOf(twice)).toEqual([]);
});

test('unknown keys beyond the first few are counted, and no message quotes a long value whole', () => {
  const many = Array.from({ length: 3000 }, (_, i) => `key${i}: 1`).join('\n');
  const [first] = problemsOf(`${many}\n${example}`);
  expect(first).toContain('unknown key "key0"');
  expect(first).toContain('2995 more unknown keys');
  for (const key of ['name', 'chemistry', 'floor', 'latitude']) {
    const problems = problemsOf(example.replace(new RegExp(`\\b${key}: [^,\\n}]*`), `${key}: ${'5x'.repeat(1e6)}`));
    expect(problems.join('\n')).toContain(key);
    expect(problems.join('').length).toBeLessThan(1000);
  }
});

test('a name that would order a terminal about is refused, of an array as of a variant', () => {
  const problems = problemsOf(
    example.replace('taller pole:', '"taller \\e[2J":').replace('- { name: freezer', '- { name: "a\\x9bb"'),
  );
  expect(problems).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/loads\[\d\]\.name: found the control character U\+009B/),
      expect.stringMatching(/variants: name: found the control character U\+001B/),
    ]),
  );
});

test('a site file in another encoding, or that is no file, is told with what to do', () => {
  const folder = mkdtempSync(join(tmpdir(), 'site-'));
  const path = join(folder, 'site.yaml');
  writeFileSync(path, example.replace(/name: .*/, 'name: Mühle'), 'latin1');
  const line = lineOf(example, 'name: ');
  expect(() => loadSite(path)).toThrow(`line ${line} is not UTF-8 but probably ISO 8859-1`);
  writeFileSync(path, `\ufeff${example}`, 'utf16le');
  expect(() => loadSite(path)).toThrow('is text in UTF-16 (little endian), expected UTF-8; save it again as UTF-8');
  expect(() => loadSite(folder)).toThrow('it is a folder, expected a file');
  expect(() => loadSite('/dev/zero')).toThrow('it is a device, expected a file');
  rmSync(folder, { recursive: true });
});
