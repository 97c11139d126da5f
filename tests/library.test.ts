import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { buildSite, loadSite, type SiteInput } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { parse } from 'yaml';

const root = join(import.meta.dirname, '..');
const examples = join(root, 'examples');
const site = join(examples, 'kettle-pond.yaml');

test('the examples of library programs run', () => {
  const programs = ['library.mjs', ...readdirSync(join(examples, 'library')).map((file) => join('library', file))];
  const printed = programs.map((file) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(examples, file)], { encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    return stdout;
  });
  const [heights, inCode] = printed;
  expect(heights!.trim().split('\n')).toHaveLength(5);
  expect(inCode).toMatch(/^Alder Bay workshop: \d+ h of engine, \d+ kWh of sun used\nthe bank holds at least \d+ Wh\n/);
  expect(inCode).toMatch(/^steep: [\d.]+ h a year, -?[\d.]+ \+- [\d.]+ h against the base$/m);
});

test('a site in code is the site of the same YAML, to the last bit of its year', () => {
  const input: SiteInput = parse(readFileSync(site, 'utf8'));
  const built = buildSite(input, examples);
  const read = loadSite(site);
  const { origin: _, ...values } = built.base;
  expect(values).toEqual({ ...read.base, origin: undefined });
  expect([...built.variants.keys()]).toEqual([...read.variants.keys()]);
  expect(simulateSite(built.base).ledger.stateOfCharge).toEqual(simulateSite(read.base).ledger.stateOfCharge);
});

test('what is wrong in a site in code is told by its keys, all at once, and its input stays as it was', () => {
  const input = parse(readFileSync(site, 'utf8'));
  input.bank.capacity = 1000;
  input.arrays[0].strings = 0.5;
  input.variants = { other: { arrays: [{ name: 'garden poll' }] } };
  const before = structuredClone(input);
  expect(() => buildSite(input)).toThrow(
    /^Kettle Pond honey house: arrays\[0\]\.strings: .*\nKettle Pond honey house: bank\.capacity: 1000 has no unit[\s\S]*garden pole/,
  );
  expect(input).toEqual(before);
});
