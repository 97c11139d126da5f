import { expect, test } from 'vitest';
import { temperatureFactor } from './temperature.js';

const atF = (tempF: number) => temperatureFactor((tempF - 32) / 1.8);

test('between two rows of the table the factor lies on the line between them', () => {
  // Halfway from 1.19 at 50 to 1.15 at 55 degF; a fifth of the way from 0.96 at 85 to 0.94 at 90 degF.
  expect(atF(52.5)).toBeCloseTo(1.17, 9);
  expect(atF(86)).toBeCloseTo(0.956, 9);
});

test('colder than the table its first line goes on, warmer than the table the last factor stays', () => {
  // From 30 to 25 degF the factor rises by 0.09, so from 25 to 20 too.
  expect(atF(20)).toBeCloseTo(1.61, 9);
  expect(atF(25)).toBeCloseTo(1.52, 9);
  expect(atF(120)).toBeCloseTo(0.86, 9);
  expect(atF(150)).toBe(0.86);
});

test('no bank is colder than -60 or hotter than 80 degC', () => {
  expect(() => temperatureFactor(-61)).toThrow('tempC must be -60 to 80, got -61');
});
