import { readFileSync } from 'node:fs';
import { parseSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { prepareBank } from './prepare-bank.js';
import { PreparedCache } from './prepared-cache.js';

const example = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');
const tailOf = (keys: string) => {
  const { base } = parseSite(example.replace('  floor: 30 %', `  floor: 30 %\n${keys}`), 'site.yaml');
  return prepareBank(base, new Float64Array(8760), new PreparedCache()).chargeRules.tailAmps;
};

// 1000 Ah, new: 2 % an hour unless given.
test('the chargers take the tail current of the site file', () => {
  expect(tailOf('')).toBe(20);
  expect(tailOf('  tailCurrent: 12 A')).toBe(12);
  expect(tailOf('  tailCurrent: 0 A')).toBe(0);
});
