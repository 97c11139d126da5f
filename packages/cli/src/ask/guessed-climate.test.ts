import { expect, test } from 'vitest';
import { guessedClimate } from './guessed-climate.js';

// Global irradiation over that above the air, month by month, of TMY3 files (Chicago O'Hare, New York Central Park), the
// test reference year of Mannheim, and the DTU climate station at Lyngby in 2016 and 2017.
const measured: [latitudeDeg: number, clearness: number[]][] = [
  [41.98, [0.45, 0.47, 0.47, 0.47, 0.55, 0.55, 0.55, 0.52, 0.52, 0.5, 0.43, 0.43]],
  [40.78, [0.45, 0.51, 0.53, 0.52, 0.49, 0.55, 0.55, 0.54, 0.54, 0.53, 0.48, 0.44]],
  [49.5, [0.32, 0.32, 0.29, 0.54, 0.52, 0.57, 0.52, 0.55, 0.56, 0.38, 0.27, 0.24]],
  [55.79, [0.3, 0.34, 0.39, 0.42, 0.58, 0.5, 0.45, 0.46, 0.52, 0.32, 0.39, 0.27]],
  [55.79, [0.3, 0.3, 0.4, 0.46, 0.5, 0.45, 0.4, 0.46, 0.39, 0.31, 0.3, 0.24]],
];

test('guessed sun is within a fifth of that of four places in nine months of ten, and never twice as much', () => {
  const apart = measured.flatMap(([latitudeDeg, clearness]) => {
    const guess = guessedClimate(latitudeDeg, 50).clearness;
    return clearness.map((K, month) => guess[month]! / K - 1);
  });
  expect(apart).toHaveLength(60);
  expect(apart.filter((by) => Math.abs(by) <= 0.2).length).toBeGreaterThanOrEqual(54);
  expect(Math.max(...apart.map(Math.abs))).toBeLessThan(0.6);
});

test('the guess of the southern half of the world has its dark months in June', () => {
  const { clearness, airC } = guessedClimate(-55, 0);
  expect(clearness.indexOf(Math.min(...clearness))).toBe(5);
  expect(airC.indexOf(Math.min(...airC))).toBe(6);
});
