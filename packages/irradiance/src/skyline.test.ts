import { radiansPerDegree as rad } from '@wintergap/ground';
import { expect, test } from 'vitest';
import type { Obstacle } from './obstacle.js';
import { hiddenSkyShare, hiddenSkyShareOf } from './sky-columns.js';
import { clearShare, compileSkyline, leavesAreOn, usualLeaves } from './skyline.js';

const wall = (elevationDeg: number): Obstacle => ({
  fromDeg: 0,
  toDeg: 360,
  topM: 100 * Math.tan(elevationDeg * rad),
  distanceM: 100,
});
const leaves = usualLeaves(47);

test('an obstacle rises to the angle of its height over the array, so a taller pole looks over it', () => {
  const wood = [{ fromDeg: 100, toDeg: 200, topM: 16, distanceM: 40 }];
  const seen = (heightM: number, elevationDeg: number) =>
    clearShare(compileSkyline(wood, undefined, heightM), 150, elevationDeg, true);
  const atFour = Math.atan(12 / 40) / rad;
  expect(seen(4, atFour - 0.01)).toBe(0);
  expect(seen(4, atFour + 0.01)).toBe(1);
  expect(seen(10, atFour - 0.01)).toBe(1);
  expect(seen(16, 0.01)).toBe(1);
});

test('an obstacle covers its directions only, through north where it runs across', () => {
  const skyline = compileSkyline([{ fromDeg: 340, toDeg: 20.5, topM: 50, distanceM: 50 }], undefined, 0);
  for (const azimuthDeg of [340, 359.9, 0, 12, 20.5, 360]) expect(clearShare(skyline, azimuthDeg, 10, true)).toBe(0);
  for (const azimuthDeg of [339.9, 20.6, 21, 180]) expect(clearShare(skyline, azimuthDeg, 10, true)).toBe(1);
});

test('what comes through two screens is the product of both, and leaves count by season', () => {
  const maples = { fromDeg: 90, toDeg: 270, topM: 20, distanceM: 40, clear: { leafOn: 0.1, leafOff: 0.5 } };
  const birches = { fromDeg: 150, toDeg: 210, topM: 10, distanceM: 40, clear: { leafOn: 0.4, leafOff: 0.8 } };
  const skyline = compileSkyline([maples, birches], undefined, 0);
  expect(clearShare(skyline, 180, 5, true)).toBeCloseTo(0.04, 12);
  expect(clearShare(skyline, 180, 5, false)).toBeCloseTo(0.4, 12);
  expect(clearShare(skyline, 180, 20, false)).toBe(0.5);
  expect(clearShare(skyline, 120, 5, false)).toBe(0.5);
});

test('a horizon runs straight between its points and round through north', () => {
  const horizon = [
    { azimuthDeg: 90, elevationDeg: 10 },
    { azimuthDeg: 270, elevationDeg: 20 },
    { azimuthDeg: 100, elevationDeg: -5 },
  ];
  const skyline = compileSkyline([], horizon, 0);
  const isHidden = (azimuthDeg: number, elevationDeg: number) =>
    clearShare(skyline, azimuthDeg, elevationDeg, true) === 0;
  expect([isHidden(0, 14.9), isHidden(0, 15.1)]).toEqual([true, false]);
  expect([isHidden(95, 2.4), isHidden(95, 2.6)]).toEqual([true, false]);
  // Between -5 at 100 and 20 at 270 the horizon passes 0 at 134 degrees.
  expect([isHidden(130, 0.01), isHidden(185, 7.4), isHidden(185, 7.6)]).toEqual([false, true, false]);
});

// Closed form: a wall all round up to the elevation e takes sin(e)^2 of an even sky from a level plane.
test('a wall all round hides from a level plane the closed-form share of the sky', () => {
  for (const elevationDeg of [5, 20, 45, 80]) {
    const { columns } = compileSkyline([wall(elevationDeg)], undefined, 0);
    expect(hiddenSkyShare(columns, 0, 180, true)).toBeCloseTo(Math.sin(elevationDeg * rad) ** 2, 9);
  }
});

// Closed form: an upright plane before a wall all round: view of the sky above e is (1 - (2 e + sin 2 e)/pi)/2 of the
// whole sphere's, against 1/2 when open (from the integral of cos(elevation)^2).
test('a wall all round hides from an upright plane the closed-form share of the sky', () => {
  for (const elevationDeg of [10, 30, 60]) {
    const { columns } = compileSkyline([wall(elevationDeg)], undefined, 0);
    const e = elevationDeg * rad;
    expect(hiddenSkyShare(columns, 90, 137, true)).toBeCloseTo((2 * e + Math.sin(2 * e)) / Math.PI, 4);
  }
});

// Closed form: an obstacle that fills the east half of the sky hides half of a level plane's sky.
test('half the sky is half of the light of a level plane, and more for a plane that faces it', () => {
  const half = { fromDeg: 0, toDeg: 180, topM: 1e4, distanceM: 1e-3 };
  const { columns } = compileSkyline([half], undefined, 0);
  expect(hiddenSkyShare(columns, 0, 90, true)).toBeCloseTo(0.5, 4);
  expect(hiddenSkyShare(columns, 60, 90, true)).toBeGreaterThan(0.8);
  expect(hiddenSkyShare(columns, 60, 270, true)).toBeLessThan(0.2);
});

test('an obstacle that lets half of the light through hides half as much sky', () => {
  const opaque = compileSkyline([wall(30)], undefined, 0);
  const thin = compileSkyline([{ ...wall(30), clear: { leafOn: 0.5, leafOff: 0.75 } }], undefined, 0);
  const whole = hiddenSkyShare(opaque.columns, 50, 170, true);
  expect(hiddenSkyShare(thin.columns, 50, 170, true)).toBeCloseTo(whole / 2, 12);
  expect(hiddenSkyShare(thin.columns, 50, 170, false)).toBeCloseTo(whole / 4, 12);
});

test('the grid of orientations is within half a percent of the sky of the sum itself', () => {
  const skyline = compileSkyline(
    [
      { fromDeg: 70, toDeg: 125, topM: 16, distanceM: 40 },
      { fromDeg: 215, toDeg: 260, topM: 14, distanceM: 20, clear: { leafOn: 0.1, leafOff: 0.5 } },
    ],
    [{ azimuthDeg: 180, elevationDeg: 6 }],
    3,
  );
  for (let tiltDeg = 0; tiltDeg <= 90; tiltDeg += 7.5) {
    for (let azimuthDeg = 0; azimuthDeg < 360; azimuthDeg += 17) {
      const sum = hiddenSkyShare(skyline.columns, tiltDeg, azimuthDeg, true);
      expect(Math.abs(hiddenSkyShareOf(skyline, tiltDeg, azimuthDeg, true) - sum)).toBeLessThan(0.005);
    }
  }
});

test('leaves are out from their first day to the day before they are down, in either hemisphere', () => {
  expect([133, 134, 272, 273].map((day) => leavesAreOn(leaves, day))).toEqual([false, true, true, false]);
  const south = usualLeaves(-41);
  expect([0, 90, 91, 316, 317, 364].map((day) => leavesAreOn(south, day))).toEqual([
    true,
    true,
    false,
    false,
    true,
    true,
  ]);
});

test('a skyline that makes no sense is refused with what was given', () => {
  const tree = { fromDeg: 100, toDeg: 110, topM: 10, distanceM: 20 };
  expect(() => compileSkyline([{ ...tree, distanceM: 0 }], undefined, 0)).toThrow(
    'distanceM of an obstacle must be above 0',
  );
  expect(() => compileSkyline([{ ...tree, toDeg: 100 }], undefined, 0)).toThrow('all round is 0 to 360');
  expect(() => compileSkyline([{ ...tree, toDeg: 400 }], undefined, 0)).toThrow(
    'toDeg of an obstacle must be 0 to 360',
  );
  expect(() => compileSkyline([{ ...tree, clear: { leafOn: 2, leafOff: 0 } }], undefined, 0)).toThrow('got 2');
  expect(() => compileSkyline([], [{ azimuthDeg: 10, elevationDeg: Number.NaN }], 0)).toThrow('got NaN');
  expect(() => compileSkyline([], undefined, Number.NaN)).toThrow('arrayHeightM');
  expect(() => compileSkyline([], undefined, 0, { onDay: 365, offDay: 1 })).toThrow('onDay of the leaves');
});
