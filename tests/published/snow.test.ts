import { snowCover, snowLossByString } from '@wintergap/mounts';
import { expect, test } from 'vitest';

// Marion, Schaefer, Caine & Sanchez (2013), Solar Energy 97, 112-121; the constants from memory of the paper.

const constant = (value: number) => new Float64Array(8760).fill(value);
const fallHour = 100;
const depthM = constant(0).map((_, h) => (h >= fallHour && h < 1000 ? 0.3 : 0));

/** Hours after the fall until the plane is bare. */
function hoursToClear(tiltDeg: number, planeWm2: number, airC: number): number {
  const share = snowCover({
    snowDepthM: depthM,
    planeWm2: constant(planeWm2),
    tiltDeg: constant(tiltDeg),
    airC: constant(airC),
  });
  return share.subarray(fallHour).indexOf(0);
}

// 0.197 sin(tilt) of the slant height in each hour: 1 / (0.197 sin(tilt)), rounded up to whole hours.
test('a plane clears in as many hours as the rule of Marion and others gives for its tilt', () => {
  const hours: [tiltDeg: number, hours: number][] = [
    [10, 30],
    [20, 15],
    [30, 11],
    [40, 8],
    [60, 6],
  ];
  for (const [tiltDeg, expected] of hours) expect(hoursToClear(tiltDeg, 300, 0)).toBe(expected);
});

// Sliding begins where air is warmer than plane irradiance / (-80 W/m2/K).
test('snow begins to slide above -5 degC at 400 W/m2 and above -10 degC at 800 W/m2', () => {
  const slides = (planeWm2: number, airC: number) => hoursToClear(40, planeWm2, airC) < 20;
  expect([slides(400, -5), slides(400, -4.9)]).toEqual([false, true]);
  expect([slides(800, -10), slides(800, -9.9)]).toEqual([false, true]);
  expect([slides(0, 0), slides(0, 0.1)]).toEqual([false, true]);
});

// Loss by strings: the covered share, rounded up to whole strings.
test('a string with one module under snow counts as lost', () => {
  const loss = snowLossByString(Float64Array.of(0, 0.01, 0.25, 0.26, 0.5, 0.51, 1), 4);
  expect(Array.from(loss)).toEqual([0, 0.25, 0.25, 0.5, 0.5, 0.75, 1]);
});
