import { daysPerYear, monthOfDay } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { lightOn, lightSearch } from './light-search.js';
import type { TiltTrials } from './tilt-trials.js';

const winter = [11, 12, 1, 2];
/** Days on which a tilt gives most at 70 degrees in winter and at 20 in summer, falling off by its cosine. */
const dailyWhM2 = (tiltDeg: number) =>
  Float64Array.from({ length: daysPerYear }, (_, day) => {
    const best = winter.includes(monthOfDay(day) + 1) ? 70 : 20;
    return 1000 * Math.cos(((tiltDeg - best) * Math.PI) / 180);
  });
const trials = {
  limits: { fromDeg: 0, toDeg: 90 },
  at: (tilts: { tiltDeg: number }[]) => ({ dailyWhM2: dailyWhM2(tilts[0]!.tiltDeg) }),
} as unknown as TiltTrials;
const at = (tilts: readonly { fromDay: number; tiltDeg: number }[]) => trials.at(tilts);

// January has 31 days of 1 kWh at the winter's best tilt, July 31 days of cos 50 of it.
test('light is summed over the days of the months asked for', () => {
  const steep = [{ fromDay: 0, tiltDeg: 70 }];
  expect(lightOn(steep, at, [1])).toBeCloseTo(31, 9);
  expect(lightOn(steep, at, [1, 7])).toBeCloseTo(31 + 31 * Math.cos((50 * Math.PI) / 180), 9);
  expect(lightOn(steep, at, [12])).toBeCloseTo(31, 9);
});

test('with two tilts each day has the light of the one that was set last, the winter one through New Year', () => {
  // Day 59 is 1 March, day 304 is 1 November: each month has its best.
  const two = [
    { fromDay: 59, tiltDeg: 20 },
    { fromDay: 304, tiltDeg: 70 },
  ];
  const every = Array.from({ length: 12 }, (_, m) => m + 1);
  expect(lightOn(two, at, every)).toBeCloseTo(365, 9);
  expect(lightOn(two.toReversed(), at, every)).toBeCloseTo(365, 9);
  // A day later on either date: one winter day and one summer day at the other's tilt.
  const late = [
    { fromDay: 60, tiltDeg: 20 },
    { fromDay: 305, tiltDeg: 70 },
  ];
  expect(lightOn(late, at, every)).toBeCloseTo(363 + 2 * Math.cos((50 * Math.PI) / 180), 9);
});

test('the tilt with the most light of the dark months is the winter one, that of the year stands between', () => {
  const { best, year, dark } = lightSearch(trials, winter, 46);
  const [ofDark] = best['dark months'].one;
  expect(ofDark!.fromDay).toBe(0);
  expect(Math.abs(ofDark!.tiltDeg - 70)).toBeLessThan(1);
  // 120 winter days and 245 others: tan(best) of the year is (120 sin 70 + 245 sin 20) / (120 cos 70 + 245 cos 20).
  const sums = [120 * Math.sin((70 * Math.PI) / 180) + 245 * Math.sin((20 * Math.PI) / 180)];
  sums.push(120 * Math.cos((70 * Math.PI) / 180) + 245 * Math.cos((20 * Math.PI) / 180));
  const expected = (Math.atan2(sums[0]!, sums[1]!) * 180) / Math.PI;
  expect(Math.abs(best.year.one[0]!.tiltDeg - expected)).toBeLessThan(1);
  expect(year([{ fromDay: 0, tiltDeg: 70 }])).toBeCloseTo(120 + 245 * Math.cos((50 * Math.PI) / 180), 6);
  expect(dark([{ fromDay: 0, tiltDeg: 70 }])).toBeCloseTo(120, 9);
});

test('two tilts by date take the best of each season, and where only the dark months decide the year settles the rest', () => {
  const { best } = lightSearch(trials, winter, 46);
  for (const which of ['year', 'dark months'] as const) {
    const tilts = best[which].two.map(({ tiltDeg }) => tiltDeg).sort((a, b) => a - b);
    expect(Math.abs(tilts[0]! - 20), which).toBeLessThan(3);
    expect(Math.abs(tilts[1]! - 70), which).toBeLessThan(3);
  }
});

test('the tilts keep within what the mount can do', () => {
  const limited = { ...trials, limits: { fromDeg: 30, toDeg: 60 } } as TiltTrials;
  const { best } = lightSearch(limited, winter, 46);
  expect(best['dark months'].one[0]!.tiltDeg).toBeCloseTo(60, 6);
  for (const { tiltDeg } of best.year.two) {
    expect(tiltDeg).toBeGreaterThanOrEqual(30);
    expect(tiltDeg).toBeLessThanOrEqual(60);
  }
});
