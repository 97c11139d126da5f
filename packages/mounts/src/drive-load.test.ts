import { sunYear } from '@wintergap/irradiance';
import { expect, test } from 'vitest';
import { driveLoadW } from './drive-load.js';
import type { Mount } from './mount.js';

const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
const points = 35040;
const drive = { kind: 'while-turning', powerW: 90, degPerMin: 3 } as const;
const twoAxis: Mount = { kind: 'two-axis', minTiltDeg: 0, maxTiltDeg: 90, drive };
const oneAxis: Mount = { kind: 'one-axis', axisTiltDeg: 0, axisAzimuthDeg: 180, limitDeg: 60, drive };
const pole: Mount = { kind: 'pole', tilts: [{ fromDay: 0, tiltDeg: 40 }], turnDeg: 360, drive };
const still = () => ({
  tiltDeg: new Float64Array(points).fill(20),
  azimuthDeg: new Float64Array(points).fill(180),
});

test('the first quarter hour of the year turns from where the last one stood', () => {
  const where = still();
  where.tiltDeg[points - 1] = 50;
  const loadW = driveLoadW(twoAxis, sun, where)!;
  // 30 degrees at 3 a minute: ten minutes of 90 W in the last hour, and ten back in the first.
  expect([loadW[0], loadW[1], loadW[8758], loadW[8759]]).toEqual([15, 0, 0, 15]);
});

test('the way is booked in the hour in which it begins, and all ways of an hour add up', () => {
  const where = still();
  // Point 7 ends hour 1; point 8 begins hour 2.
  where.azimuthDeg.fill(210, 7, 9);
  where.azimuthDeg[9] = 150;
  const loadW = driveLoadW(pole, sun, where)!;
  // Out by 30 degrees; then across by 60 and back by 30.
  expect(Array.from(loadW.subarray(0, 4))).toEqual([0, 15, 45, 0]);
});

test('a pole turns the way its stops allow, not across them', () => {
  const where = still();
  where.azimuthDeg.fill(10, 400, 401);
  where.azimuthDeg.fill(350, 401, 402);
  // Facing south it goes from 180 east to 10, back over 180 to 350, and home: 170 + 340 + 170 degrees.
  expect(driveLoadW(pole, sun, where)![100]).toBeCloseTo((90 * 680) / 180, 9);
});

test('standing still draws nothing, whatever the rounding of a direction', () => {
  const where = still();
  where.tiltDeg.fill(33.3);
  where.azimuthDeg.fill(123.456);
  where.azimuthDeg[500] = 123.456 + 1e-12;
  for (const mount of [oneAxis, twoAxis, pole]) {
    const loadW = driveLoadW(mount, sun, where)!;
    expect(loadW.every((watts) => watts >= 0 && watts < 1e-3)).toBe(true);
  }
});

test('a plane that turns over does so by half a turn, as far as its rotation can tell', () => {
  const where = still();
  where.tiltDeg.fill(90);
  where.azimuthDeg.fill(90, 400, 401).fill(270, 401, 402).fill(90, 402);
  where.azimuthDeg.fill(90, 0, 400);
  // Upright to the east, upright to the west, and back: 180 degrees each way.
  expect(driveLoadW(oneAxis, sun, where)![100]).toBeCloseTo((90 * 360) / 180, 6);
});
