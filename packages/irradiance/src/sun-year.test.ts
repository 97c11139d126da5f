import { expect, test } from 'vitest';
import { sunYear } from './sun-year.js';

const north = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });

test('the sun is up half of the year, and a little more by refraction and its season of slow motion', () => {
  let hours = 0;
  for (let h = 0; h < 8760; h++) hours += north.upShare[h]!;
  expect(hours / 8760).toBeGreaterThan(0.5);
  expect(hours / 8760).toBeLessThan(0.51);
});

test('a point is up in all of its arrays or down in all of them', () => {
  for (let i = 0; i < north.cosZenith.length; i++) {
    const up = north.cosZenith[i]! > 0;
    const asDown = north.zenithDeg[i] === 180 && north.azimuthDeg[i] === 0 && north.cosZenith[i] === 0;
    if (up ? north.zenithDeg[i]! >= 90 : !asDown) throw new Error(`point ${i} is neither up nor down`);
  }
});

test('no hour is taken for dark that is not', () => {
  // With every hour evaluated, the sun is up next to where it is up: sunrise and sunset are not cut off by the hour.
  for (const latitudeDeg of [-66, -30, 0, 35, 52, 66, 78]) {
    const { upShare, zenithDeg } = sunYear({ latitudeDeg, longitudeDeg: 17, utcOffsetH: 1 });
    for (let h = 1; h < 8760; h++) {
      if (upShare[h - 1]! !== 0 || upShare[h]! === 0) continue;
      const first = zenithDeg.subarray(h * 4, h * 4 + 4).findIndex((zenith) => zenith < 90);
      // In a quarter of an hour the sun rises at most 3.75 degrees.
      expect(90 - zenithDeg[h * 4 + first]!).toBeLessThan(3.76 + 0.5);
    }
  }
});

test('polar night and polar day are years without trouble', () => {
  const pole = sunYear({ latitudeDeg: 90, longitudeDeg: 0, utcOffsetH: 0 });
  expect(pole.upShare[12]).toBe(0);
  expect(pole.upShare[182 * 24]).toBe(1);
  expect(pole.zenithDeg.every(Number.isFinite) && pole.azimuthDeg.every(Number.isFinite)).toBe(true);
});

test('by the sundial the sun stands due south at noon all year, wherever the zone puts its clock', () => {
  const sundial = sunYear({ latitudeDeg: 49.5, longitudeDeg: 8.55, utcOffsetH: 1, clock: 'sundial' });
  for (let day = 0; day < 365; day++) {
    const before = sundial.azimuthDeg[(day * 24 + 11) * 4 + 3]!;
    const after = sundial.azimuthDeg[(day * 24 + 12) * 4]!;
    expect(Math.abs((before + after) / 2 - 180)).toBeLessThan(0.05);
  }
});

test('a leap year leaves out 29 February and keeps 31 December', () => {
  const leap = sunYear({ latitudeDeg: 40, longitudeDeg: 0, utcOffsetH: 0 }, 2024);
  const next = sunYear({ latitudeDeg: 40, longitudeDeg: 0, utcOffsetH: 0 }, 2025);
  // From 1 March on the sun of 2024 is within a quarter of a day's motion of that of 2025.
  for (const day of [70, 200, 364]) {
    const i = (day * 24 + 12) * 4;
    expect(Math.abs(leap.zenithDeg[i]! - next.zenithDeg[i]!)).toBeLessThan(0.11);
  }
});

test('a place or year out of range is refused with what was given', () => {
  const place = { latitudeDeg: 40, longitudeDeg: 0, utcOffsetH: 0 };
  expect(() => sunYear({ ...place, latitudeDeg: 95 })).toThrow('latitudeDeg must be -90 to 90, got 95');
  expect(() => sunYear({ ...place, longitudeDeg: Number.NaN })).toThrow('longitudeDeg must be -180 to 180, got NaN');
  expect(() => sunYear(place, 2025.5)).toThrow('calendarYear must be a whole number');
  expect(() => sunYear({ ...place, clock: 'summer' as 'sundial' })).toThrow('clock must be standard or sundial');
});
