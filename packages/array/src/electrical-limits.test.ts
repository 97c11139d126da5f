import { expect, test } from 'vitest';
import { awgAreaMm2, cableOhm } from './conductors.js';
import { electricalLimits, type Limit, type LimitCode, type LimitsInput } from './electrical-limits.js';
import { currentAt, maximumPower } from './operating-point.js';
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

const direct = { kind: 'direct', maxCurrentA: 40, nightDrawW: 0.1 } as const;
const level = (code: LimitCode, change: Partial<LimitsInput>) => limit(code, change).level;

test('a limit that is just met is met', () => {
  const coldV = limit('cold-voltage').value;
  const survives = (maxVoltageV: number) => ({ controller: { ...base.controller, maxVoltageV } });
  expect([level('cold-voltage', survives(coldV)), level('cold-voltage', survives(coldV - 0.01))]).toEqual([
    'ok',
    'exceeded',
  ]);
  const ratedA = limit('controller-current').value;
  // By hand: 6 modules of 32.5 V x 9.24 A at 24 V.
  expect(ratedA).toBeCloseTo((6 * 32.5 * 9.24) / 24, 9);
  const carries = (maxCurrentA: number) => ({ controller: { ...base.controller, maxCurrentA } });
  expect([level('controller-current', carries(ratedA)), level('controller-current', carries(ratedA - 0.01))]).toEqual([
    'ok',
    'note',
  ]);
  const shortA = 1.25 * 3 * 9.82;
  const passes = (maxCurrentA: number) => ({ controller: { ...direct, maxCurrentA } });
  expect([level('controller-current', passes(shortA)), level('controller-current', passes(shortA - 0.01))]).toEqual([
    'ok',
    'exceeded',
  ]);
});

test('what no stated limit allows to check is left out, or told as not checked; so are those of one kind of controller with the other', () => {
  const codes = (change: Partial<LimitsInput>) => electricalLimits({ ...base, ...change }).map(({ code }) => code);
  const bare = codes({ controller: { kind: 'direct', nightDrawW: 0.1 } });
  // Too many in series destroy a controller: that this was not looked at must be told.
  const unchecked = electricalLimits({ ...base, controller: { kind: 'direct', nightDrawW: 0.1 } })[0]!;
  expect(unchecked).toMatchObject({ code: 'cold-voltage', level: 'note' });
  expect(unchecked.text).toMatch(/ V; not checked, since nothing says what the controller bears \(maxVoltage\)$/);
  expect(bare).not.toContain('controller-current');
  expect(bare).toContain('voltage-too-high');
  expect(codes({})).not.toContain('voltage-too-high');
  const { powerPerK: _, ...unsaid } = sheet;
  expect(codes({ sheet: unsaid })).not.toContain('power-coefficient');
  expect(codes({})).toContain('power-coefficient');
});

test('the coldest hour of a weather file is not called a record', () => {
  const text = (change: Partial<LimitsInput>) => electricalLimits({ ...base, ...change })[0]!.text;
  expect(text({ recordLowC: -20 })).toContain('at the record low of -20 degC');
  expect(text({ recordLowC: -20, recordIsUnknown: true })).toContain(
    'at the coldest hour of the weather, no record being given, -20 degC',
  );
});

// By hand: 3 strings x 9.24 A through the cable, over 2 x 32.5 V; the other two strings' 2 x 9.82 A into a faulty one.
test('the drop of a cable and the current of faulty strings follow from the sheet', () => {
  const ohm = cableOhm(base.cable);
  expect(limit('voltage-drop').value).toBeCloseTo((3 * 9.24 * ohm) / 65, 12);
  const justMet = { ...base.cable, lengthM: (base.cable.lengthM * 0.03) / limit('voltage-drop').value };
  expect(level('voltage-drop', { cable: { ...justMet, lengthM: justMet.lengthM * 0.999 } })).toBe('ok');
  expect(level('voltage-drop', { cable: { ...justMet, lengthM: justMet.lengthM * 1.001 } })).toBe('note');
  expect(limit('string-fuse')).toMatchObject({ level: 'note', limit: 9.82 });
  expect(limit('string-fuse').value).toBeCloseTo(2 * 9.82, 9);
  // 1.5625 x 300 A lies above every common fuse.
  expect(limit('string-fuse', { sheet: { ...sheet, iscA: 300 } }).text).toContain('no common size');
});

test('a voltage short by up to a tenth is a note, by more it is too little; the margin of the controller counts', () => {
  const { value } = limit('voltage-too-low');
  const bankAt = (share: number, marginV = 1) => ({ absorptionHotV: value / share - marginV });
  expect([0.99, 1.01, 1.1, 1.12].map((short) => level('voltage-too-low', bankAt(1 / short)))).toEqual([
    'ok',
    'note',
    'note',
    'exceeded',
  ]);
  expect(limit('voltage-too-low').limit).toBeCloseTo(28.8 + 1, 12);
  const controller = { ...base.controller, minVoltageAboveBankV: 5 } as LimitsInput['controller'];
  expect(limit('voltage-too-low', { controller }).limit).toBeCloseTo(28.8 + 5, 12);
  expect(limit('voltage-too-low', { controller: direct }).limit).toBe(28.8);
  // The cable takes its share: a longer one lowers the voltage by the current at the best point times its ohms.
  const longer = { ...base.cable, lengthM: 2 * base.cable.lengthM };
  const fallV = value - limit('voltage-too-low', { cable: longer }).value;
  const hot = new Float64Array(3);
  maximumPower(base.parameters, 1000, 70, hot);
  expect(fallV).toBeCloseTo(3 * hot[2]! * cableOhm(base.cable), 9);
});

// A direct connection uses V x I(V) of one module at 28.8 V / n, of the 300 W at its best point.
test('what a direct connection leaves unused follows from the curve', () => {
  const unused = (inSeries: number) => limit('voltage-too-high', { controller: direct, inSeries }).value;
  const moduleW = 14.4 * currentAt(base.parameters, 1000, 25, 14.4);
  expect(unused(2)).toBeCloseTo(1 - moduleW / (32.5 * 9.24), 6);
  // One in series stands at 28.8 V, near its best: too few in series waste power as well, but not for being too many.
  expect(unused(1)).toBeLessThan(0.25);
  const low = limit('voltage-too-high', { controller: direct, inSeries: 1, absorptionV: 39.5 });
  expect(low.value).toBeGreaterThan(0.25);
  expect(low.level).toBe('ok');
});

test('a sheet whose power coefficient is not that of its curve is noted from 0.07 % per K on', () => {
  const ofCurve = sheet.powerPerK + limit('power-coefficient').value;
  const off = (by: number) => level('power-coefficient', { sheet: { ...sheet, powerPerK: ofCurve + by } });
  expect([-0.0008, -0.0006, 0, 0.0006, 0.0008].map(off)).toEqual(['note', 'ok', 'ok', 'ok', 'note']);
});

test('banks and cells out of range are refused, the ends of the range are not', () => {
  for (const [change, words] of [
    [{ bankV: 1001 }, /bankV/],
    [{ absorptionHotV: 0 }, /absorptionHotV/],
    [{ absorptionV: -1 }, /absorptionV/],
    [{ hotCellC: 121 }, /hotCellC/],
    [{ hotCellC: -51 }, /hotCellC/],
  ] as const) {
    expect(() => electricalLimits({ ...base, ...change })).toThrow(words);
  }
  for (const change of [{ bankV: 1000 }, { hotCellC: 120 }, { hotCellC: -50 }]) {
    expect(electricalLimits({ ...base, ...change }).length).toBeGreaterThan(4);
  }
});
