import { join } from 'node:path';
import { loadSite, type Site } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { tiltKey, tiltTrials } from './tilt-trials.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml')).base;
type SiteArray = Site['arrays'][number];
/** The design with its one array under these names, strings and mounts. */
const withArrays = (...arrays: Partial<SiteArray>[]): Site => ({
  ...site,
  arrays: arrays.map((of) => ({ ...site.arrays[0]!, ...of })),
});
const mount = (of: object) => of as SiteArray['mount'];
const fixed = mount({ kind: 'fixed', tilt: 60, azimuth: 180 });
const seasonal = mount({
  kind: 'seasonal',
  azimuth: 180,
  tilts: [
    { from: 280, tilt: 70 },
    { from: 90, tilt: 30 },
  ],
});

test('tilts that are equal have one name whatever their dates', () => {
  expect(tiltKey([{ fromDay: 0, tiltDeg: 60 }])).toBe('60');
  expect(
    tiltKey([
      { fromDay: 90, tiltDeg: 60 },
      { fromDay: 280, tiltDeg: 60 },
    ]),
  ).toBe('60');
  expect(
    tiltKey([
      { fromDay: 90, tiltDeg: 30 },
      { fromDay: 280, tiltDeg: 60 },
    ]),
  ).not.toBe(
    tiltKey([
      { fromDay: 91, tiltDeg: 30 },
      { fromDay: 280, tiltDeg: 60 },
    ]),
  );
});

test('an array without a tilt to choose, and one that is not there, are refused by name', () => {
  const turning = mount({ kind: 'two-axis', minTilt: 0, maxTilt: 90, turn: 360 });
  const design = withArrays(
    { name: 'tracker', mount: turning },
    { name: 'shed', mount: fixed },
    { name: 'planned', strings: 0 },
  );
  expect(() => tiltTrials(design, 'tracker')).toThrow('the mount of "tracker" is two-axis: it has no tilt to choose');
  expect(() => tiltTrials(design, 'barn')).toThrow('no array is called "barn"; there are tracker, shed');
  expect(() => tiltTrials(design, 'planned')).toThrow('no array is called "planned"');
  expect(() => tiltTrials(withArrays({ name: 'tracker', mount: turning }), undefined)).toThrow(
    'no array has a fixed, seasonal or pole mount',
  );
  expect(() => tiltTrials({ ...site, arrays: [] }, 'barn')).toThrow('there are none');
});

test('the first array with a tilt to choose is tried, on the mount that it has', () => {
  const turning = mount({ kind: 'two-axis', minTilt: 0, maxTilt: 90, turn: 360 });
  const design = withArrays({ name: 'tracker', mount: turning }, { name: 'shed', mount: fixed });
  const trials = tiltTrials(design, undefined);
  expect([trials.arrayName, trials.mount, trials.limits]).toEqual(['shed', 'fixed', { fromDeg: 0, toDeg: 90 }]);
  expect(trials.tiltsAsDesigned).toEqual([{ fromDay: 0, tiltDeg: 60 }]);
  const [tracker, shed] = trials.designAt([{ fromDay: 0, tiltDeg: 45 }]).arrays;
  expect(tracker).toBe(design.arrays[0]);
  expect(shed!.mount).toMatchObject({ kind: 'fixed', tilt: 45, azimuth: 180 });
  const two = [
    { fromDay: 280, tiltDeg: 70 },
    { fromDay: 90, tiltDeg: 30 },
  ];
  expect(trials.designAt(two).arrays[1]!.mount).toMatchObject({
    kind: 'seasonal',
    azimuth: 180,
    tilts: [
      { from: 280, tilt: 70 },
      { from: 90, tilt: 30 },
    ],
  });
});

test('a pole stays one, with its own tilts and as far as it goes', () => {
  const pole = mount({ kind: 'pole', turn: 220, facing: 180, tilt: 50, maxTilt: 75 });
  const trials = tiltTrials(withArrays({ mount: pole }), undefined);
  expect([trials.mount, trials.limits.toDeg, trials.tiltsAsDesigned]).toEqual([
    'pole',
    75,
    [{ fromDay: 0, tiltDeg: 50 }],
  ]);
  const set = trials.designAt([{ fromDay: 5, tiltDeg: 40 }]).arrays[0]!.mount;
  expect(set).toEqual({ kind: 'pole', turn: 220, facing: 180, maxTilt: 75, tilts: [{ from: 5, tilt: 40 }] });
  const alike = [
    { fromDay: 5, tiltDeg: 40 },
    { fromDay: 9, tiltDeg: 40 },
  ];
  expect(trials.designAt(alike).arrays[0]!.mount).toEqual(set);
});

test('light on the cells is that of the array asked for, day by day, and each tilt is run once', () => {
  const design = withArrays(
    { name: 'roof', mount: mount({ kind: 'fixed', tilt: 20, azimuth: 90 }) },
    { name: 'shed', mount: seasonal },
  );
  const trials = tiltTrials(design, 'shed');
  expect(trials.tiltsAsDesigned).toEqual([
    { fromDay: 280, tiltDeg: 70 },
    { fromDay: 90, tiltDeg: 30 },
  ]);
  const steep = [{ fromDay: 0, tiltDeg: 70 }];
  const light = trials.at(steep);
  expect(trials.at(steep)).toBe(light);
  const { arrays, summary } = simulateSite(trials.designAt(steep));
  const lit = arrays.find(({ name }) => name === 'shed')!.dc.litWm2;
  expect(light.dailyWhM2).toHaveLength(365);
  expect(light.dailyWhM2[100]).toBeCloseTo(
    lit.slice(2400, 2424).reduce((sum, watts) => sum + watts, 0),
    6,
  );
  expect(light.dailyWhM2.reduce((sum, wh) => sum + wh, 0)).toBeCloseTo(
    lit.reduce((sum, watts) => sum + watts, 0),
    3,
  );
  expect(trials.lightOf(trials.designAt(steep)).dailyWhM2).toEqual(light.dailyWhM2);
  expect(trials.darkSeason.month).toBe(summary.darkSeason.month);
  expect(trials.snowLies).toBe(true);
});
