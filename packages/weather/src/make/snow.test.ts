import { monthOfHour } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { RandomStream } from './random.js';
import { snowDepth } from './snow.js';

const monthOfDay = Uint8Array.from({ length: 365 }, (_, day) => monthOfHour(day * 24));
const seasonC = Float64Array.from({ length: 8760 }, (_, h) => 4 - 16 * Math.cos(((h - 360) * 2 * Math.PI) / 8760));
const clearness = Float64Array.from({ length: 365 }, (_, day) => 0.15 + (0.5 * ((day * 7) % 11)) / 10);
const fallDays = [13, 10, 9, 4, 0, 0, 0, 0, 0, 2, 8, 12];
const fallM = [0.4, 0.3, 0.3, 0.1, 0, 0, 0, 0, 0, 0.02, 0.25, 0.4];

const newSnowDays = (depthM: Float64Array, month: number): number[] => {
  const days: number[] = [];
  for (let day = 0; day < 365; day++) {
    if (monthOfDay[day] !== month) continue;
    let grew = false;
    for (let h = day * 24; h < day * 24 + 24; h++) grew ||= depthM[h]! > depthM[(h + 8759) % 8760]!;
    if (grew) days.push(day);
  }
  return days;
};

test('snow falls on the number of days that was asked for, on the dull rather than the clear ones', () => {
  const depthM = snowDepth({ snow: { fallDays, fallM }, airC: seasonC, clearness, monthOfDay }, new RandomStream(7));
  for (const month of [0, 1, 2, 11]) {
    const days = newSnowDays(depthM, month);
    // A light fall may not outdo the settling of a deep cover.
    expect(days.length).toBeLessThanOrEqual(fallDays[month]!);
    expect(days.length).toBeGreaterThanOrEqual(fallDays[month]! - 2);
    const mean = days.reduce((sum, day) => sum + clearness[day]!, 0) / days.length;
    expect(mean).toBeLessThan(0.36);
  }
});

test('snow lies in January, is gone by June, and the year ends as deep as it begins', () => {
  const depthM = snowDepth({ snow: { fallDays, fallM }, airC: seasonC, clearness, monthOfDay }, new RandomStream(7));
  expect(Math.min(...depthM.subarray(0, 24 * 60))).toBeGreaterThan(0.05);
  expect(Math.max(...depthM)).toBeLessThan(2);
  expect(Math.max(...depthM.subarray(151 * 24, 270 * 24))).toBe(0);
  expect(Math.abs(depthM[0]! - depthM[8759]!)).toBeLessThan(0.08);
});

test('in the depth of a frost the month adds what fell, less what settled', () => {
  const airC = new Float64Array(8760).fill(-10);
  const only = [0.5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const depthM = snowDepth(
    { snow: { fallDays: [5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0], fallM: only }, airC, clearness, monthOfDay },
    new RandomStream(7),
  );
  let fallen = 0;
  for (let h = 0; h < 31 * 24; h++) fallen += Math.max(0, depthM[h]! - (h > 0 ? depthM[h - 1]! : depthM[8759]!));
  expect(fallen).toBeGreaterThan(0.48);
  expect(fallen).toBeLessThanOrEqual(0.5);
});
