import { readFileSync } from 'node:fs';
import { changedDesign, parseSite } from '@wintergap/site';
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

const site = parseSite(example, 'site.yaml');
const outdoorC = new Float64Array(8760).fill(-10);
/** The bank of a site file some of whose values are changed. */
const bankOf = (changes: Record<string, unknown>) =>
  prepareBank(changedDesign(site, changes), outdoorC, new PreparedCache());

// 3 m2 of 2 in foam: 3 / (0.17 + 0.0508 / 0.032) W/K.
test('a cabinet is as tight as its foam or as it is written', () => {
  const foam = bankOf({ 'bank.cabinet.ventilation': '0.5 W/K' }).cabinet;
  expect(foam.insulationWPerK).toBeCloseTo(1.707, 3);
  expect(foam).toMatchObject({ heatCapacityWhPerK: 250, ventilationWPerK: 0.5 });
  expect(foam).not.toHaveProperty('sharedRoom');
  const other = { foam: '2 in', area: '3 m2', conductivity: 0.064 };
  expect(bankOf({ 'bank.cabinet.insulation': other }).cabinet.insulationWPerK).toBeCloseTo(3.113, 3);
  expect(bankOf({ 'bank.cabinet.insulation': '0.9 W/K' }).cabinet.insulationWPerK).toBe(0.9);
});

// 24 kWh at 33 Wh/kg are 727 kg of 0.28 Wh/(kg K).
test('a bank without a cabinet gives its heat to the air of the rooms, and has that of its weight', () => {
  const { bank, ...rest } = changedDesign(site, {});
  const { cabinet: _, ...bare } = bank;
  const { cabinet, heater, aroundC } = prepareBank({ ...rest, bank: bare } as never, outdoorC, new PreparedCache());
  expect(cabinet.insulationWPerK).toBe(12);
  expect(cabinet.heatCapacityWhPerK).toBeCloseTo(203.6, 1);
  expect(heater).toBeNull();
  expect(aroundC[0]).toBeGreaterThan(5);
});

test('a cabinet stands outdoors, heated by nothing, by a heater or by a room behind one of its walls', () => {
  const plain = bankOf({});
  expect([plain.aroundC[0], plain.heater]).toEqual([-10, null]);
  const none = bankOf({ 'bank.cabinet.heatedBy': 'none' });
  expect([none.heater, none.cabinet.sharedRoom]).toEqual([null, undefined]);
  const heated = bankOf({ 'bank.cabinet.heatedBy': { kind: 'heater', power: '60 W', keepAbove: '5 degC' } });
  expect(heated.heater).toEqual({ powerW: 60, keepAboveC: 5 });
  expect(heated.cabinet).not.toHaveProperty('sharedRoom');
  const beside = bankOf({ 'bank.cabinet.heatedBy': { kind: 'room', temperature: '18 degC', coupling: '2 W/K' } });
  expect([beside.heater, beside.cabinet.sharedRoom]).toEqual([null, { roomC: 18, WPerK: 2 }]);
});

test('a bank is equalised as often and as long as is written, or never', () => {
  expect(bankOf({}).chargeRules).toMatchObject({ equaliseEveryDays: 0, equaliseH: 0, absorptionH: 3 });
  const equalise = { voltage: '31 V', every: 30, time: '2 h' };
  expect(bankOf({ 'bank.equalise': equalise }).chargeRules).toMatchObject({ equaliseEveryDays: 30, equaliseH: 2 });
});
