import { expect, test } from 'vitest';
import { capacityAfterYears } from './capacity-after-years.js';
import { checkCycleTable, cyclesAtDepth } from './cycle-life.js';
import { ageingSpeed, wearOfYear } from './wear.js';

const table = [
  { depth: 0.2, cycles: 3000 },
  { depth: 0.5, cycles: 1200 },
  { depth: 0.8, cycles: 700 },
];
const settings = {
  chemistry: 'flooded-lead-acid',
  voltageV: 24,
  capacityAh: 1000,
  atRateH: 20,
  cyclesByDepth: table,
  calendarLifeYears: 10,
} as const;

test('a table of cycles is met at its points and falls between and beyond', () => {
  expect(cyclesAtDepth(0.5, table)).toBeCloseTo(1200, 9);
  let last = Number.POSITIVE_INFINITY;
  for (let depth = 0.01; depth <= 1; depth += 0.01) {
    const cycles = cyclesAtDepth(depth, table);
    expect(cycles).toBeLessThan(last);
    last = cycles;
  }
  expect(cyclesAtDepth(0, table)).toBe(Number.POSITIVE_INFINITY);
});

test('a table out of order is refused', () => {
  expect(() => checkCycleTable([{ depth: 0.5, cycles: 100 }])).toThrow(/2 or more/);
  expect(() => checkCycleTable([...table].reverse())).toThrow(RangeError);
});

// Miner's rule: 365 cycles of 50 % out of 1200, and a tenth of the calendar life at 25 degC.
test('a year of daily 50 % cycles uses 365/1200 of the cycle life', () => {
  const state = Float64Array.from({ length: 8760 }, (_, h) =>
    h % 24 < 12 ? 1 - (h % 24) / 24 : 0.5 + ((h % 24) - 12) / 24,
  );
  const wear = wearOfYear(state, new Float64Array(8760).fill(25), settings);
  expect(wear.cycleLifeUsed).toBeCloseTo(365 / 1200, 2);
  expect(wear.calendarLifeUsed).toBeCloseTo(0.1, 12);
  expect(wear.equivalentFullCycles).toBeCloseTo(182.5, 0);
  expect(wear.yearsTo80).toBeCloseTo(1 / (365 / 1200 + 0.1), 1);
});

test('ten kelvin warmer halves the calendar life; cold is credited down to 15 degC only', () => {
  expect(ageingSpeed(35) / ageingSpeed(25)).toBe(2);
  expect(ageingSpeed(-20)).toBe(ageingSpeed(15));
});

test('capacity after years is 80 % when the life is used up, and stays above nothing', () => {
  expect(capacityAfterYears(10, 0.1)).toBeCloseTo(0.8, 12);
  expect(capacityAfterYears(0, 0.1)).toBe(1);
  expect(capacityAfterYears(500, 1)).toBe(0.2);
  expect(() => capacityAfterYears(-1, 0.1)).toThrow(RangeError);
});

test('series of different length are refused', () => {
  expect(() => wearOfYear(new Float64Array(10), new Float64Array(9), settings)).toThrow(/10 and 9/);
});

// Straight lines in log-log pass through the geometric means of neighbours: (0.2 x 0.5)^0.5 and (3000 x 1200)^0.5. The first
// line has slope -1 (0.2 x 3000 = 0.5 x 1200 = 600), the last log(7/12) / log(8/5) = -1.1468.
test('between and beyond the points of a table cycles follow its lines', () => {
  expect(cyclesAtDepth(Math.sqrt(0.1), table)).toBeCloseTo(Math.sqrt(3000 * 1200), 8);
  expect(cyclesAtDepth(Math.sqrt(0.4), table)).toBeCloseTo(Math.sqrt(1200 * 700), 8);
  expect(cyclesAtDepth(0.1, table)).toBeCloseTo(6000, 8);
  expect(cyclesAtDepth(1, table)).toBeCloseTo(700 * 1.25 ** -1.1468, 1);
});

test('a table is as good with two points, and none without ever fewer cycles at ever greater depth', () => {
  const [first, second] = [
    { depth: 0.2, cycles: 3000 },
    { depth: 0.5, cycles: 1200 },
  ];
  expect(() => checkCycleTable([first!, second!])).not.toThrow();
  for (const change of [{ depth: 0.2 }, { depth: 0.1 }, { cycles: 3000 }, { cycles: 3100 }]) {
    expect(() => checkCycleTable([first!, { ...second!, ...change }])).toThrow(/from shallow to deep/);
  }
});

test('half a year uses half the calendar life of a year, and lasts as many years', () => {
  const halfYear = wearOfYear(new Float64Array(4380).fill(0.8), new Float64Array(4380).fill(25), settings);
  expect(halfYear.calendarLifeUsed).toBeCloseTo(0.05, 12);
  expect(halfYear.yearsTo80).toBeCloseTo(10, 9);
});

test('two hours are the shortest series', () => {
  expect(wearOfYear(Float64Array.of(1, 0.5), Float64Array.of(25, 25), settings).equivalentFullCycles).toBe(0.5);
  expect(() => wearOfYear(Float64Array.of(1), Float64Array.of(25), settings)).toThrow(/2 or more, got 1 and 1/);
});
