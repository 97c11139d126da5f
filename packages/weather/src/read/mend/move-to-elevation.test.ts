import { expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { moveToElevation } from './move-to-elevation.js';

const base = { ...clearYear(), pressurePa: new Float64Array(8760).fill(101_325) };

// International Standard Atmosphere table (ISO 2533), from memory: 1000 m 89 875 Pa, 2000 m 79 495 Pa.
test('a thousand metres up is 6.5 K colder, with the pressure of the standard atmosphere', () => {
  const up = moveToElevation(base, 0, 1000);
  expect(up.airC[7]! - base.airC[7]!).toBeCloseTo(-6.5, 10);
  expect(Math.abs(up.pressurePa![0]! - 89_875)).toBeLessThan(5);
  expect(Math.abs(moveToElevation(base, 0, 2000).pressurePa![0]! - 79_495)).toBeLessThan(5);
  expect(up.place.elevationM).toBe(1000);
  expect(up.ghiWm2).toBe(base.ghiWm2);
});

test('up and down again is where it began', () => {
  const back = moveToElevation(moveToElevation(base, 200, 900), 900, 200);
  expect(back.airC[100]).toBeCloseTo(base.airC[100]!, 10);
  expect(back.pressurePa![100]).toBeCloseTo(101_325, 6);
});

test('a rise that is no rise is refused', () => {
  expect(() => moveToElevation(base, 0, Number.NaN)).toThrow(RangeError);
  expect(() => moveToElevation(base, 0, 9000)).toThrow('within 4000 m');
});
