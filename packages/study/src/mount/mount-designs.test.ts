import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import { mountWays, withMount } from './mount-designs.js';

const tilts = {
  fixedDeg: 55,
  seasons: [
    { fromDay: 280, tiltDeg: 70 },
    { fromDay: 90, tiltDeg: 30 },
  ],
  darkDays: { from: 304, to: 30 },
} as const;
const waysAt = (latitude: number) => mountWays(latitude, tilts);

test('the ways go from a fixed plane to one that follows the sun in both axes', () => {
  const ways = waysAt(46);
  expect(ways.map(({ name, kind }) => [name, kind])).toEqual([
    ['fixed at 55', 'fixed'],
    ['fixed, vertical', 'fixed'],
    ['by season, 70 and 30', 'seasonal'],
    ['pole', 'tracking'],
    ['one axis, level', 'tracking'],
    ['two axes', 'tracking'],
  ]);
  expect(ways[1]!.mount).toMatchObject({ tilt: 90, azimuth: 180 });
  expect(ways[2]!.mount).toMatchObject({
    tilts: [
      { from: 280, tilt: 70 },
      { from: 90, tilt: 30 },
    ],
  });
});

test('axes that follow the sun reach as far as is customary', () => {
  const [oneAxis, twoAxis] = waysAt(46).slice(4);
  expect(oneAxis!.mount).toEqual({ kind: 'one-axis', axisTilt: 0, axisAzimuth: 180, limit: 60 });
  expect(twoAxis!.mount).toEqual({ kind: 'two-axis', minTilt: 0, maxTilt: 90, turn: 360 });
});

test('what moves can be stuck through the dark season, facing the equator; what does not move cannot', () => {
  const ways = waysAt(46);
  expect(ways.slice(0, 3).map(({ stuck }) => stuck)).toEqual([null, null, null]);
  const stuck = ways.slice(3).map((way) => way.stuck as { stuck: object[] });
  expect(stuck.map(({ stuck: [spell] }) => spell)).toEqual([
    { from: 304, to: 30, azimuth: 180, tilt: 70 },
    { from: 304, to: 30, azimuth: 180, tilt: 0 },
    { from: 304, to: 30, azimuth: 180, tilt: 55 },
  ]);
});

test('south of the equator planes look north, on the equator south', () => {
  expect(waysAt(-35)[0]!.mount).toMatchObject({ azimuth: 0 });
  expect(waysAt(-35)[3]!.mount).toMatchObject({ facing: 0 });
  expect(waysAt(0)[0]!.mount).toMatchObject({ azimuth: 180 });
});

test('one array goes onto another mount, the others stay as they are', () => {
  const [{ mount }] = waysAt(46) as [ReturnType<typeof waysAt>[number]];
  const [pole, roof] = ['pole', 'roof'].map((name) => ({ name, mount: { kind: 'fixed', tilt: 10 } })) as Site['arrays'];
  const design = { name: 'Otter Bend', arrays: [pole, roof] } as Site;
  const changed = withMount(design, roof!, mount);
  expect(changed.arrays[0]).toBe(pole);
  expect(changed.arrays[1]).toEqual({ name: 'roof', mount });
  expect(changed.name).toBe('Otter Bend');
});
