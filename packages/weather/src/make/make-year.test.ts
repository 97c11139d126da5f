import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sunOf } from '../sun-of-place.js';
import type { WeatherYear } from '../weather-year.js';
import { clearestSky } from './ceiling.js';
import { makeYear } from './make-year.js';
import type { MonthlyMeans } from './monthly-means.js';
import { monthMeans } from './monthly-smooth.js';

const place = { latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6, elevationM: 430 };
const means: MonthlyMeans = {
  sun: { kind: 'irradiation', kWhPerM2Day: [1.6, 2.6, 3.8, 4.8, 5.5, 5.9, 6.0, 5.1, 3.8, 2.4, 1.4, 1.2] },
  airC: [-12, -9, -3, 4, 11, 16, 19, 18, 13, 6, -2, -9],
};

const columns = (year: WeatherYear) => [year.ghiWm2, year.dniWm2, year.dhiWm2, year.airC, year.windMs, year.snowDepthM];

test('months have their irradiation within 0.1 % and their temperature within 0.001 K', () => {
  for (const hours of ['scattered', 'smooth'] as const) {
    const year = makeYear(means, place, { seed: 1, hours });
    monthMeans(year.ghiWm2).forEach((meanWm2, m) => {
      const wanted = means.sun.kind === 'irradiation' ? means.sun.kWhPerM2Day[m]! : 0;
      expect(Math.abs((meanWm2 * 0.024) / wanted - 1)).toBeLessThan(0.001);
    });
    monthMeans(year.airC).forEach((airC, m) => {
      expect(Math.abs(airC - means.airC[m]!)).toBeLessThan(0.001);
    });
  }
});

test('clearness and irradiation are two ways to say the same', () => {
  const first = makeYear({ ...means, sun: { kind: 'clearness', clearness: new Array(12).fill(0.47) } }, place, {
    seed: 4,
  });
  const kWhPerM2Day = [...monthMeans(first.ghiWm2)].map((meanWm2) => meanWm2 * 0.024);
  const second = makeYear({ ...means, sun: { kind: 'irradiation', kWhPerM2Day } }, place, { seed: 4 });
  expect(Math.max(...second.ghiWm2.map((wm2, h) => Math.abs(wm2 - first.ghiWm2[h]!)))).toBeLessThan(1e-3);
});

test('the same seed gives the same bits and another seed another year', () => {
  const snowy = { ...means, snow: { fallDays: [12, 9, 8, 4, 0, 0, 0, 0, 0, 2, 8, 12] } };
  const first = makeYear(snowy, place, { seed: 42 });
  expect(columns(makeYear(snowy, place, { seed: 42 }))).toEqual(columns(first));
  const other = makeYear(snowy, place, { seed: 43 });
  columns(other).forEach((values, i) => {
    expect(values).not.toEqual(columns(first)[i]);
  });
});

test('adding snow or wind changes nothing else', () => {
  const bare = makeYear(means, place, { seed: 9 });
  const more = makeYear({ ...means, windMs: new Array(12).fill(4), snow: { fallDays: new Array(12).fill(3) } }, place, {
    seed: 9,
  });
  expect(more.ghiWm2).toEqual(bare.ghiWm2);
  expect(more.airC).toEqual(bare.airC);
});

// Far from the equator a winter month of clearness 0.66 is more than any sky gives, and is refused.
function madeOrRefused(given: MonthlyMeans, where: typeof place, seed: number): WeatherYear | 'too bright' {
  try {
    return makeYear(given, where, { seed });
  } catch (error) {
    if (error instanceof RangeError && error.message.includes('more than the clearest sky')) return 'too bright';
    throw error;
  }
}

// Polar night included: north of 66.6 degrees some months have no sun, or days of it only.
test('from 60 south to 68 north no hour is above the clearest sky, below zero or not a number', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -60, max: 68 }),
      fc.integer({ min: -11, max: 11 }),
      fc.array(fc.integer({ min: 8, max: 66 }), { minLength: 12, maxLength: 12 }),
      fc.nat(),
      (latitudeDeg, utcOffsetH, percents, seed) => {
        const clearness = percents.map((percent) => percent / 100);
        const where = { latitudeDeg, longitudeDeg: utcOffsetH * 15 + 4, utcOffsetH, elevationM: 200 };
        const given: MonthlyMeans = {
          ...means,
          sun: { kind: 'clearness', clearness },
          snow: { fallDays: new Array(12).fill(5) },
        };
        const year = madeOrRefused(given, where, seed);
        if (year === 'too bright') return Math.abs(latitudeDeg) > 50;
        const ceiling = clearestSky(sunOf(where), 200);
        let worst = 0;
        for (let h = 0; h < 8760; h++) {
          const [ghi, dni, dhi] = [year.ghiWm2[h]!, year.dniWm2[h]!, year.dhiWm2[h]!];
          if (!(ghi >= 0 && dni >= 0 && dhi >= 0 && dhi <= ghi * (1 + 1e-12) && dni < 1420)) worst = Number.NaN;
          if (!(year.airC[h]! > -60 && year.airC[h]! < 60 && year.windMs[h]! >= 0)) worst = Number.NaN;
          if (!(year.snowDepthM![h]! >= 0)) worst = Number.NaN;
          worst = Math.max(worst, ghi - ceiling[h]!);
        }
        return worst <= 1e-9;
      },
    ),
    { numRuns: 25 },
  );
});

test('a month brighter than the clearest sky is refused, in polar night a trace too much is cut', () => {
  const sunny = (december: number): MonthlyMeans => ({
    ...means,
    sun: { kind: 'irradiation', kWhPerM2Day: [0.05, 0.6, 2, 3.8, 5, 5.5, 5, 3.6, 2, 0.6, 0.05, december] },
  });
  const arctic = { latitudeDeg: 68, longitudeDeg: 20, utcOffsetH: 1 };
  expect(() => makeYear(sunny(3), arctic, { seed: 1 })).toThrow(
    /^Dec: 3.00 kWh\/m2 a day is more than the clearest sky/,
  );
  const year = makeYear(sunny(0.05), arctic, { seed: 1 });
  expect(year.notices.map((notice) => notice.code)).toContain('month-cut-to-clear-sky');
});

test('impossible means, places and seeds are refused with the month and the value', () => {
  const wrong = (change: Partial<MonthlyMeans>) => () => makeYear({ ...means, ...change }, place, { seed: 1 });
  expect(wrong({ airC: [1, 2, 3] })).toThrow('airC must be 12 values, January first, got 3');
  expect(wrong({ airC: [...means.airC.slice(0, 11), Number.NaN] })).toThrow('airC must be -70 to 50, got NaN for Dec');
  expect(wrong({ dailyExtremes: { minC: new Array(12).fill(0), maxC: new Array(12).fill(30) } })).toThrow(
    'Jan: minC 0, airC -12, maxC 30 must rise in that order',
  );
  expect(() => makeYear(means, { ...place, latitudeDeg: 95 }, { seed: 1 })).toThrow(
    'latitudeDeg must be -90 to 90, got 95',
  );
  expect(() => makeYear(means, place, { seed: -4 })).toThrow('seed must be a whole number');
});
