import { monthOfHour, monthSpan } from '@wintergap/ground';
import { max, mean, min, sampleCorrelation, standardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { monthMeans } from './monthly-smooth.js';
import { RandomStream } from './random.js';
import {
  courseOfTemperature,
  swingFromClearness,
  type TemperatureCauses,
  wanderingTemperature,
} from './temperature.js';

const monthOfDay = Uint8Array.from({ length: 365 }, (_, day) => monthOfHour(day * 24));
const meanC = [-12, -9, -3, 4, 11, 16, 19, 18, 13, 6, -2, -9];
const swingK = [10, 11, 10, 11, 13, 13, 12, 12, 11, 9, 7, 8];

function causes(seed: number): TemperatureCauses {
  const random = new RandomStream(seed, 99);
  return {
    meanC,
    swingK,
    clearness: Float64Array.from({ length: 365 }, () => 0.2 + 0.5 * random.uniform()),
    extraterrestrialKWh: Float64Array.from(
      { length: 365 },
      (_, day) => 7 - 4.5 * Math.cos(((day + 10) * 2 * Math.PI) / 365),
    ),
    monthOfDay,
    solarNoonH: 12,
  };
}

test('the course of a day sums to nothing, spans one swing, is coldest before sunrise and warmest in mid-afternoon', () => {
  const hours = Array.from({ length: 240 }, (_, i) => courseOfTemperature(i / 10));
  expect(Math.abs(mean(hours))).toBeLessThan(1e-12);
  expect(max(hours) - min(hours)).toBeGreaterThan(0.95);
  expect(max(hours) - min(hours)).toBeLessThan(1.05);
  expect(hours.indexOf(min(hours)) / 10).toBeGreaterThan(3.5);
  expect(hours.indexOf(min(hours)) / 10).toBeLessThan(6.5);
  expect(hours.indexOf(max(hours)) / 10).toBeGreaterThan(14);
  expect(hours.indexOf(max(hours)) / 10).toBeLessThan(16);
});

// FAO Irrigation and Drainage Paper 56, eq. 50: Rs = 0.16 sqrt(swing) Ra; a swing of 9 K goes with clearness 0.48.
test('the swing that goes with a clearness is the inverse of the formula of Hargreaves and Samani', () => {
  expect(swingFromClearness(0.48)).toBeCloseTo(9, 10);
  expect(swingFromClearness(0.1)).toBe(4);
  expect(swingFromClearness(0.75)).toBe(16);
});

test('months have exactly their means, nearly their swings, and no step between them', () => {
  for (const seed of [1, 2, 3]) {
    const airC = wanderingTemperature(causes(seed), new RandomStream(seed));
    const means = monthMeans(airC);
    for (let m = 0; m < 12; m++) {
      expect(Math.abs(means[m]! - meanC[m]!)).toBeLessThan(1e-9);
      const spans: number[] = [];
      for (let h = monthSpan(m).fromHour; h < monthSpan(m).toHour; h += 24) {
        const day = [...airC.subarray(h, h + 24)];
        spans.push(max(day) - min(day));
      }
      expect(Math.abs(mean(spans) - swingK[m]!)).toBeLessThan(0.5);
    }
    const steps = airC.map((now, h) => Math.abs(airC[(h + 1) % 8760]! - now));
    expect(Math.max(...steps)).toBeLessThan(8);
  }
});

test('clear days are the colder ones in winter and the warmer ones in summer', () => {
  const winter: number[] = [];
  const summer: number[] = [];
  const winterSpread: number[] = [];
  for (let seed = 0; seed < 8; seed++) {
    const given = causes(seed);
    const airC = wanderingTemperature(given, new RandomStream(seed));
    const days = Array.from({ length: 365 }, (_, day) => mean([...airC.subarray(day * 24, day * 24 + 24)]));
    const link = (from: number, to: number): number =>
      sampleCorrelation(days.slice(from, to), [...given.clearness.subarray(from, to)]);
    winter.push(link(0, 31));
    summer.push(link(151, 212));
    winterSpread.push(standardDeviation(days.slice(0, 31)));
  }
  expect(mean(winter)).toBeLessThan(-0.2);
  expect(mean(summer)).toBeGreaterThan(0.15);
  // 3 to 7 K in January in the typical years of Mannheim, New York and Chicago, the warmest place first.
  expect(mean(winterSpread)).toBeGreaterThan(3);
  expect(mean(winterSpread)).toBeLessThan(7);
});
