import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { converterInputW, converterYear } from './converter.js';
import { type Inverter, inverterEfficiency, inverterInputW, inverterYear } from './inverter.js';
import { inverterFit } from './inverter-fit.js';
import { inverterLosses } from './inverter-losses.js';
import { loadYear } from './load-year.js';
import { europeanEfficiency } from './weighted-efficiency.js';

const inverter: Inverter = {
  powerW: 4000,
  surgeW: 8000,
  ...inverterLosses(4000, 18, { kind: 'peak', efficiency: 0.93 }),
};

test('without load only the idle draw remains', () => {
  expect(inverterInputW(0, inverter)).toBe(18);
  expect(inverterEfficiency(0, inverter)).toBe(0);
});

test('the quoted peak is met where it is said to be, and is the highest value', () => {
  expect(inverterEfficiency(4000 / 3, inverter)).toBeCloseTo(0.93, 12);
  for (let acW = 20; acW <= 4000; acW += 20) {
    expect(inverterEfficiency(acW, inverter)).toBeLessThanOrEqual(0.93 + 1e-12);
  }
});

test('a large idle draw moves the peak towards full power', () => {
  const heavy: Inverter = {
    powerW: 1000,
    surgeW: 2000,
    ...inverterLosses(1000, 20, { kind: 'peak', efficiency: 0.93 }),
  };
  expect(heavy.proportionalLoss).toBe(0);
  // sqrt(i/k2) with k1 = 0: 2 x 0.02 / (1/0.93 - 1) = 0.531.
  expect(inverterEfficiency(531.4, heavy)).toBeCloseTo(0.93, 6);
});

test('peak and rated values are both met', () => {
  const losses = inverterLosses(3000, 25, { kind: 'peak-and-rated', peak: 0.94, rated: 0.89 });
  const both: Inverter = { powerW: 3000, surgeW: 6000, ...losses };
  expect(inverterEfficiency(3000, both)).toBeCloseTo(0.89, 12);
  let best = 0;
  for (let acW = 1; acW <= 3000; acW++) best = Math.max(best, inverterEfficiency(acW, both));
  expect(best).toBeCloseTo(0.94, 6);
});

test('an inverter without losses gives what it takes', () => {
  const ideal: Inverter = { powerW: 1000, surgeW: 1000, ...inverterLosses(1000, 0, { kind: 'peak', efficiency: 1 }) };
  expect(inverterInputW(0, ideal)).toBe(0);
  expect(inverterInputW(700, ideal)).toBe(700);
});

test('a rated value alone is met at the rating', () => {
  const rated: Inverter = {
    powerW: 2000,
    surgeW: 4000,
    ...inverterLosses(2000, 12, { kind: 'rated', efficiency: 0.9 }),
  };
  expect(inverterEfficiency(2000, rated)).toBeCloseTo(0.9, 12);
});

test('three points of any inverter of this form give the inverter back', () => {
  const tenThousandths = (min: number, max: number) => fc.integer({ min, max }).map((part) => part / 10_000);
  fc.assert(
    fc.property(
      tenThousandths(0, 300),
      // A curve point above 99.9 % is refused, so the inverter loses a little in proportion.
      tenThousandths(20, 2000),
      tenThousandths(0, 2000),
      (idleShare, proportionalLoss, squareLoss) => {
        const made: Inverter = { powerW: 1000, surgeW: 2000, idleW: 1000 * idleShare, proportionalLoss, squareLoss };
        const at = (share: number) => ({ share, efficiency: inverterEfficiency(1000 * share, made) });
        const found = inverterLosses(1000, 0, { kind: 'three-points', points: [at(1), at(0.2), at(0.6)] });
        expect(found.idleW).toBeCloseTo(made.idleW, 7);
        // Losses of a billionth count as none.
        expect(found.proportionalLoss).toBeCloseTo(proportionalLoss, 8);
        expect(found.squareLoss).toBeCloseTo(squareLoss, 8);
      },
    ),
    { numRuns: 100 },
  );
});

test('figures that leave a gain somewhere are refused', () => {
  expect(() => inverterLosses(1000, 100, { kind: 'peak', efficiency: 0.98 })).toThrow(
    'half the idle draw as loss at every load, got idle 100 W',
  );
  expect(() => inverterLosses(1000, 60, { kind: 'rated', efficiency: 0.95 })).toThrow('half the idle draw');
  const gaining: Inverter = { powerW: 1000, surgeW: 1000, idleW: 1, proportionalLoss: -0.1, squareLoss: 0.1 };
  expect(() => inverterYear(new Float64Array(8760), gaining)).toThrow('must lose at least half its idle draw');
});

test('more output never takes less input, also across the edge of search mode', () => {
  const searching: Inverter = { ...inverter, search: { idleW: 3, belowW: 25 } };
  expect(inverterInputW(0, searching)).toBe(3);
  expect(inverterInputW(25, searching) - inverterInputW(24.999, searching)).toBeGreaterThan(14);
  for (let acW = 0; acW < 4000; acW += 5) {
    expect(inverterInputW(acW + 5, searching)).toBeGreaterThan(inverterInputW(acW, searching));
  }
});

test('an inverter gives no more than its rating, hour by hour', () => {
  const acW = new Float64Array(8760);
  acW[5] = 3000;
  acW[6] = 9000;
  const dcW = inverterYear(acW, inverter);
  expect(dcW[4]).toBe(18);
  expect(dcW[5]).toBe(inverterInputW(3000, inverter));
  expect(dcW[6]).toBe(inverterInputW(4000, inverter));
});

test('with losses in proportion only, every weighted efficiency is the same', () => {
  const even: Inverter = { powerW: 1000, surgeW: 1000, idleW: 0, proportionalLoss: 0.25, squareLoss: 0 };
  expect(europeanEfficiency(even)).toBeCloseTo(0.8, 12);
});

describe('the fit of inverter and load', () => {
  const context = { airC: new Float64Array(8760), upShare: new Float64Array(8760), firstWeekday: 0 };

  test('hours above the rating, starts and coinciding loads are told apart', () => {
    const load = loadYear(
      [
        { name: 'welder', powerW: 4500, hours: [[10, 11]], days: [0], bus: 'ac' },
        { name: 'pump', powerW: 1000, runs: 0.1, hours: [[10, 12]], surge: { factor: 5 }, bus: 'ac' },
      ],
      [],
      context,
    );
    // 53 Sundays in a year that begins with one; 4500 + 100 W in those hours, 5000 - 100 W more in a start.
    expect(inverterFit(load, inverter)).toEqual({
      hoursAboveRating: 53,
      darkWh: 53 * 600,
      largestHourW: 4600,
      surgeExceeded: true,
      coincidentExceeded: true,
    });
  });

  test('a small load fits', () => {
    const load = loadYear([{ name: 'router', powerW: 10, bus: 'ac' }], [], context);
    expect(inverterFit(load, inverter)).toEqual({
      hoursAboveRating: 0,
      darkWh: 0,
      largestHourW: 10,
      surgeExceeded: false,
      coincidentExceeded: false,
    });
  });
});

test('a DC-DC converter draws its idle power and its losses', () => {
  const converter = { efficiency: 0.9, idleW: 1.5 };
  expect(converterInputW(90, converter)).toBeCloseTo(101.5, 12);
  expect(converterYear(new Float64Array(8760), converter)[77]).toBe(1.5);
  expect(() => converterYear(new Float64Array(8760), { efficiency: 0, idleW: 0 })).toThrow(RangeError);
});
