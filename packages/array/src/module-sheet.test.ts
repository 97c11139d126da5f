import { expect, test } from 'vitest';
import { checkModuleSheet, type ModuleSheet } from './module-sheet.js';

// Invented sheet, 20 V class. Nothing is solved here: a sheet is only looked at.
const sheet: ModuleSheet = { vmpV: 32, impA: 9, vocV: 40, iscA: 10, cells: 60, vocPerK: -0.003, iscPerK: 0.0005 };
const looked = (change: Partial<ModuleSheet>) => () => checkModuleSheet({ ...sheet, ...change });

test('a usual sheet passes, with and without what may be left out', () => {
  expect(looked({})).not.toThrow();
  expect(looked({ powerW: 290, powerPerK: -0.004, noctC: 45, areaM2: 1.7, technology: 'crystalline' })).not.toThrow();
});

test.each<[keyof ModuleSheet, number, number, string]>([
  ['vocPerK', -0.006, -0.001, 'vocPerK must be -0.006 to -0.001, as a fraction, so that -0.31 % per K is -0.0031'],
  ['iscPerK', -0.001, 0.003, 'iscPerK must be -0.001 to 0.003, as a fraction'],
  ['powerPerK', -0.008, -0.0005, 'powerPerK must be -0.008 to -0.0005, as a fraction'],
  ['noctC', 30, 70, 'noctC must be 30 to 70, got'],
])('%s lies between its limits, which are allowed themselves', (key, low, high, message) => {
  for (const value of [low, high]) expect(looked({ [key]: value })).not.toThrow();
  for (const value of [low - 1e-4, high + 1e-4]) expect(looked({ [key]: value })).toThrow(message);
  expect(looked({ [key]: Number.NaN })).toThrow(message);
  // A sign left out or added is the usual slip.
  if (key === 'vocPerK' || key === 'powerPerK') expect(looked({ [key]: 0.0004 })).toThrow(message);
});

test('volts, amperes and cells of no module are refused by name', () => {
  for (const [key, low, high] of [
    ['vocV', 0.3, 1000],
    ['iscA', 0.01, 100],
    ['vmpV', 0.1, 1000],
    ['impA', 0.01, 100],
    ['cells', 1, 1000],
  ] as const) {
    for (const value of [0.9 * low, 1.1 * high]) {
      expect(looked({ [key]: value })).toThrow(`${key} must be ${low} to ${high}, got ${value}`);
    }
  }
});

// A curve that bends one way only lies above the lines from its peak to both ends, so its peak is above half of each.
test('the best point lies beyond the middle and short of the end of both axes', () => {
  for (const vmpV of [20, 40]) {
    expect(looked({ vmpV })).toThrow(`vmpV must lie between half of vocV and vocV (20 to 40 V), got ${vmpV}`);
  }
  for (const impA of [5, 10]) {
    expect(looked({ impA })).toThrow(`impA must lie between half of iscA and iscA (5 to 10 A), got ${impA}`);
  }
});

test('a fill factor is 0.4 to 0.9, both allowed', () => {
  // 25 V x 6.4 A of 40 V x 10 A are 0.4; 37.5 V x 9.6 A are 0.9.
  expect(looked({ vmpV: 25, impA: 6.4 })).not.toThrow();
  expect(looked({ vmpV: 37.5, impA: 9.6 })).not.toThrow();
  expect(looked({ vmpV: 25, impA: 6.3 })).toThrow(
    'fill factor vmpV x impA / (vocV x iscA) must be 0.4 to 0.9, got 0.394',
  );
  expect(looked({ vmpV: 38, impA: 9.6 })).toThrow('got 0.912: check vmpV and impA');
});

test('a stated power agrees with volts times amperes within 3 %', () => {
  // 32 V x 9 A are 288 W, 3 % of them 8.64 W.
  for (const powerW of [279.5, 296.5]) expect(looked({ powerW })).not.toThrow();
  for (const powerW of [279.2, 296.8, Number.NaN]) {
    expect(looked({ powerW })).toThrow(`vmpV x impA (288.0 W) within 3 %, got ${powerW}`);
  }
});

test('open-circuit volts per cell are those of silicon, of thin film those of some semiconductor', () => {
  // 40 V: 0.45 and 0.8 V a cell lie between 88 and 89, and at 50; 0.3 and 3 V lie between 133 and 134, 13 and 14.
  for (const cells of [50, 88]) expect(looked({ cells })).not.toThrow();
  for (const cells of [49, 89]) expect(looked({ cells })).toThrow('vocV per cell must be 0.45 to 0.8 V');
  for (const cells of [14, 133]) expect(looked({ cells, technology: 'thin-film' })).not.toThrow();
  for (const cells of [13, 134]) {
    expect(looked({ cells, technology: 'thin-film' })).toThrow('vocV per cell must be 0.3 to 3 V');
  }
  expect(looked({ cells: 120 })).toThrow('got 0.333 with 120 cells: cells counts those in series');
  // 18 V of 40 cells and 4 V of 5 are exactly 0.45 and 0.8 V each.
  expect(looked({ vocV: 18, vmpV: 15, cells: 40 })).not.toThrow();
  expect(looked({ vocV: 4, vmpV: 3.2, cells: 5 })).not.toThrow();
});

test('no module turns more than 35 % of the light into power', () => {
  // 3.2 V x 0.5 A are 1.6 W and need 46 cm2; the least outline there is has 50 cm2, the largest 10 m2.
  const small = { vocV: 4, vmpV: 3.2, cells: 6, iscA: 0.55, impA: 0.5 };
  expect(looked({ ...small, areaM2: 0.005 })).not.toThrow();
  for (const areaM2 of [0.0049, 10.1]) expect(looked({ ...small, areaM2 })).toThrow('areaM2 must be 0.005 to 10, got');
  expect(looked({ areaM2: 10 })).not.toThrow();
  // 288 W need 288 / 350 = 0.823 m2, 315 W just 0.9.
  expect(looked({ areaM2: 0.83 })).not.toThrow();
  expect(looked({ areaM2: 0.82 })).toThrow(
    'areaM2 must leave the module below 35 % efficiency (0.82 m2 or more), got 0.82',
  );
  expect(looked({ vmpV: 35, impA: 9, areaM2: 0.9 })).not.toThrow();
});
