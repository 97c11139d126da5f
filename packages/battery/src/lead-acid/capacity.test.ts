import { expect, test } from 'vitest';
import {
  capacityByDischargeTime,
  capacityByRate,
  capacityByTemperature,
  copettiRateWeight,
  rateWeightOf,
  tenHourAh,
} from './capacity.js';

// The equation's own reference point and its limit of no current.
test('capacity is C10 at the ten-hour rate and 1.67 C10 at rest', () => {
  expect(capacityByRate(1)).toBeCloseTo(1, 12);
  expect(capacityByRate(0)).toBe(1.67);
  expect(capacityByDischargeTime(10)).toBeCloseTo(1, 9);
});

test('a label at a long discharge time means less at ten hours', () => {
  let last = 0;
  for (const rateH of [0.5, 1, 5, 10, 20, 72, 100]) {
    const c10 = 1 / tenHourAh(1, rateH);
    expect(c10).toBeGreaterThan(last);
    last = c10;
    // The definition: emptied in rateH hours at that capacity over rateH.
    const q = capacityByDischargeTime(rateH);
    expect(capacityByRate((10 * q) / rateH)).toBeCloseTo(q, 9);
  }
});

test('two points of a label fix the rule: both hold, and the printed rule finds itself again', () => {
  for (const [slowAh, slowH, fastAh, fastH] of [
    [1200, 100, 1000, 20],
    [100, 20, 92, 10],
    [650, 72, 430, 5],
  ] as const) {
    const weight = rateWeightOf({ capacityAh: slowAh, atRateH: slowH }, { capacityAh: fastAh, atRateH: fastH });
    expect(tenHourAh(slowAh, slowH, weight)).toBeCloseTo(tenHourAh(fastAh, fastH, weight), 6);
  }
  const printed = { capacityAh: capacityByDischargeTime(100), atRateH: 100 };
  expect(rateWeightOf({ capacityAh: 1, atRateH: 10 }, printed)).toBeCloseTo(copettiRateWeight, 6);
});

test('capacity falls with cold and never turns negative', () => {
  for (let tempC = -300; tempC < 100; tempC += 1) {
    expect(capacityByTemperature(tempC)).toBeGreaterThan(0);
    expect(capacityByTemperature(tempC + 1)).toBeGreaterThanOrEqual(capacityByTemperature(tempC));
  }
});

test('two points that no bank has are refused', () => {
  const label = { capacityAh: 1000, atRateH: 20 };
  const refuse = (other: typeof label, words: RegExp) => {
    expect(() => rateWeightOf(label, other)).toThrow(words);
    expect(() => rateWeightOf(other, label)).toThrow(words);
  };
  refuse({ capacityAh: 0, atRateH: 100 }, /capacityAh of a label/);
  refuse({ capacityAh: 700, atRateH: 0.2 }, /atRateH of a label/);
  refuse({ capacityAh: 1200, atRateH: 20 }, /must be/);
  // The same point twice says nothing of the rate.
  refuse({ capacityAh: 1000, atRateH: 20 }, /must be/);
  // More than at rest, 1.67 times the ten-hour capacity, and less than at the faster rate.
  refuse({ capacityAh: 1700, atRateH: 100 }, /at 100 h must be .* got 1700 Ah/);
  refuse({ capacityAh: 999, atRateH: 100 }, /at 100 h must be .* got 999 Ah/);
});
