import { expect, test } from 'vitest';
import { pond } from './check/clear-year.fixture.js';
import { cosWhileUp, sunOf, sunPlace } from './sun-of-place.js';

test('the sun of a place is worked out once while nobody asks for another', () => {
  const sun = sunOf(pond);
  expect(sunOf({ ...pond })).toBe(sun);
  const other = sunOf({ ...pond, utcOffsetH: -5 });
  expect(other).not.toBe(sun);
  expect(other.meanCosZenith[13]).toBeCloseTo(sun.meanCosZenith[12]!, 2);
  expect(sunOf(pond).meanCosZenith).toEqual(sun.meanCosZenith);
});

test('a place without its UTC offset has no sun', () => {
  expect(sunPlace({ latitudeDeg: 46.9, longitudeDeg: -92.2 })).toBeNull();
  expect(sunPlace(pond)).toEqual({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
});

test('the mean cosine while the sun is up leaves out the dark part of the hour', () => {
  const sun = sunOf(pond);
  const part = sun.upShare.indexOf(0.5);
  expect(part).toBeGreaterThan(0);
  expect(cosWhileUp(sun, part)).toBeCloseTo(2 * sun.meanCosZenith[part]!, 12);
  expect(cosWhileUp(sun, 0)).toBe(0);
});
