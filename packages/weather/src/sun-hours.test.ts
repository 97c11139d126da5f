import { getPosition } from 'suncalc';
import { expect, test } from 'vitest';
import { pond } from './clear-year.fixture.js';
import { sunHours } from './sun-hours.js';

const rad = Math.PI / 180;

// suncalc gives apparent altitudes; refraction is below 0.1 degrees with the sun 10 degrees up.
test('the mean cosine of the zenith angle agrees with suncalc to 0.002 while the sun is well up', () => {
  const { cosZenith } = sunHours(pond);
  const start = Date.UTC(2001, 0, 1) - pond.utcOffsetH * 3_600_000;
  let compared = 0;
  for (let h = 5; h < 8760; h += 7) {
    if (cosZenith[h]! < 0.17) continue;
    let mean = 0;
    for (let minute = 2.5; minute < 60; minute += 5) {
      const time = new Date(start + (h * 60 + minute) * 60_000);
      mean += Math.sin(getPosition(time, pond.latitudeDeg, pond.longitudeDeg).altitude * rad) / 12;
    }
    expect(Math.abs(cosZenith[h]! - mean)).toBeLessThan(0.002);
    compared++;
  }
  expect(compared).toBeGreaterThan(400);
});

// Eccentricity of the orbit 0.0167: 1/(1 - e)^2 and 1/(1 + e)^2 at the ends of it, early in January and July.
test('the extraterrestrial irradiance is strongest in January', () => {
  const { extraNormalWm2 } = sunHours(pond);
  expect(extraNormalWm2[3 * 24]! / 1361).toBeCloseTo(1.0343, 3);
  expect(extraNormalWm2[184 * 24]! / 1361).toBeCloseTo(0.9674, 3);
});

test('beyond the polar circle the sun stays down at Christmas and up at midsummer', () => {
  const { upFraction } = sunHours({ latitudeDeg: 70, longitudeDeg: 25, utcOffsetH: 2 });
  expect(upFraction.subarray(358 * 24, 359 * 24).every((up) => up === 0)).toBe(true);
  expect(upFraction.subarray(171 * 24, 172 * 24).every((up) => up === 1)).toBe(true);
});
