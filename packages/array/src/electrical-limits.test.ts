import { expect, test } from 'vitest';
import { awgAreaMm2 } from './conductors.js';
import { electricalLimits, type Limit, type LimitCode, type LimitsInput } from './electrical-limits.js';
import { solveModule } from './solve-module.js';

// Invented sheet, 20 V class, two in series, three strings on a 24 V bank.
const sheet = {
  ...{
    vmpV: 32.5,
    impA: 9.24,
    vocV: 39.9,
    iscA: 9.82,
    cells: 60,
    powerPerK: -0.0039,
    vocPerK: -0.0031,
    iscPerK: 0.0005,
  },
};
const base: LimitsInput = {
  sheet,
  parameters: solveModule(sheet),
  inSeries: 2,
  strings: 3,
  controller: { kind: 'maximum-power', maxVoltageV: 150, maxCurrentA: 80, efficiency: 0.97, nightDrawW: 1 },
  bankV: 24,
  absorptionHotV: 28.8,
  absorptionV: 28.8,
  recordLowC: -40,
  hotCellC: 70,
  cable: { lengthM: 15, areaMm2: awgAreaMm2(6), conductorC: 50 },
};
function limit(code: LimitCode, change: Partial<LimitsInput> = {}): Limit {
  const found = electricalLimits({ ...base, ...change }).find((each) => each.code === code);
  if (!found) throw new Error(`no ${code} among the limits`);
  return found;
}

test('a sound design has nothing exceeded, and each check tells its figures', () => {
  const limits = electricalLimits(base);
  expect(limits.map((each) => each.level)).not.toContain('exceeded');
  for (const each of limits) expect(Number.isFinite(each.value) && Number.isFinite(each.limit)).toBe(true);
});

// By hand: 2 x 39.9 V x (1 + 0.0031 x 65) = 95.8797 V.
test('the open-circuit voltage at the record low is the sheet value times its coefficient', () => {
  expect(limit('cold-voltage').value).toBeCloseTo(95.8797, 4);
  expect(limit('cold-voltage', { inSeries: 4 })).toMatchObject({ level: 'exceeded', limit: 150 });
});

// Code table, from memory: -36 to -40 degC 1.25.
test('a sheet without coefficient is taken by the code table', () => {
  const { vocPerK: _, ...bare } = sheet;
  const found = limit('cold-voltage', { sheet: bare });
  expect(found.value).toBeCloseTo(2 * 39.9 * 1.25, 9);
  expect(found.text).toContain('table');
});

test('conductors carry 156 % of short-circuit current, a direct controller 125 %', () => {
  expect(limit('conductor-current').value).toBeCloseTo(1.5625 * 3 * 9.82, 9);
  const thin = { ...base.cable, areaMm2: awgAreaMm2(12) };
  expect(limit('conductor-current', { cable: thin }).level).toBe('exceeded');
  const direct = { kind: 'direct', maxCurrentA: 30, nightDrawW: 0.1 } as const;
  expect(limit('controller-current', { controller: direct })).toMatchObject({ level: 'exceeded', limit: 30 });
  expect(limit('controller-current', { controller: direct }).value).toBeCloseTo(1.25 * 3 * 9.82, 9);
});

test('a maximum-power controller smaller than the array clips, which is a note, not an error', () => {
  const controller = { ...base.controller, maxCurrentA: 60 };
  expect(limit('controller-current', { controller }).level).toBe('note');
});

test('string fuses are called for from three strings on', () => {
  expect(limit('string-fuse').text).toContain('20 A or more');
  expect(electricalLimits({ ...base, strings: 2 }).some((each) => each.code === 'string-fuse')).toBe(false);
});

test('a long thin cable is noted by its share of the voltage', () => {
  const cable = { lengthM: 60, areaMm2: 10, conductorC: 50 };
  expect(limit('voltage-drop').level).toBe('ok');
  expect(limit('voltage-drop', { cable }).level).toBe('note');
});

test('one 60-cell module is too low for a 24 V bank in the heat, two are not', () => {
  expect(limit('voltage-too-low', { inSeries: 1 }).level).toBe('exceeded');
  expect(limit('voltage-too-low').level).toBe('ok');
});

test('two 60-cell modules in series waste much of their power on a direct controller', () => {
  const controller = { kind: 'direct', nightDrawW: 0.1 } as const;
  expect(limit('voltage-too-high', { controller }).level).toBe('note');
  expect(limit('voltage-too-high', { controller }).value).toBeGreaterThan(0.4);
  expect(limit('voltage-too-high', { controller, inSeries: 1 }).level).toBe('ok');
});

test('nonsense is refused', () => {
  expect(() => electricalLimits({ ...base, bankV: 0 })).toThrow(/bankV must be/);
  expect(() => electricalLimits({ ...base, hotCellC: Number.NaN })).toThrow(/hotCellC must be/);
});
