import { expect, test } from 'vitest';
import type { CommonRun } from '../common/common-wish.js';
import type { SnowRange } from '../common/snow-range.js';
import type { YearFigures } from '../year-figures.js';
import { engineTilts } from './engine-tilts.js';

const scatter = [-4, 3, -1, 2, 0];
/** Designs of these mean engine hours, each year up or down by the same few hours, so that their differences are sure. */
function runOf(hours: Record<string, number>): CommonRun {
  const designs = Object.entries(hours).map(([name, mean]) => ({
    name,
    years: scatter.map(
      (by) =>
        ({
          generatorHours: mean + by,
          fuelLitres: 2 * mean,
          darkHours: 0,
          darkKWh: 0,
          throttledKWh: 0,
          lowestStateOfCharge: 0.4,
          autonomyDays: 3,
          generatorMonthHours: [],
          generatorWeekHours: [],
        }) as unknown as YearFigures,
    ),
  }));
  return { weather: { count: 5, kind: 'real', spread: null }, designs };
}

const candidates = [40, 50, 60, 70, 80].map((tiltDeg) => ({
  tiltDeg,
  name: `${tiltDeg}`,
  darkLight: tiltDeg === 60 ? 99 : tiltDeg,
}));
/** Of 40 h half an hour counts: 50 to 70 are equal, 40 and 80 are worse. */
const bowl = { '40': 45, '50': 40.2, '60': 40, '70': 40.3, '80': 48, 'of another grid': 10 };

test('the tilts around the least that chance does not tell apart from it are equal, whatever else was run', () => {
  const { tried, equal } = engineTilts(candidates, runOf(bowl), null, null);
  expect(equal).toEqual({ fromDeg: 50, toDeg: 70 });
  expect(tried.map(({ tiltDeg, againstLeast }) => [tiltDeg, againstLeast.verdict])).toEqual([
    [40, 'more'],
    [50, 'none'],
    [60, 'none'],
    [70, 'none'],
    [80, 'more'],
  ]);
  expect(tried[0]!.againstLeast.mean).toBeCloseTo(5, 9);
});

test('each tilt is told with its mean, its usual and its one-in-ten year, and its fuel', () => {
  // Of -4, -1, 0, 2, 3 the median is 0 and nine tenths of the way 2.6.
  const [first] = engineTilts(candidates, runOf(bowl), null, null).tried;
  expect(first!.hours.mean).toBeCloseTo(45, 9);
  expect(first!.usualHours).toBeCloseTo(45, 9);
  expect(first!.oneInTenHours).toBeCloseTo(47.6, 9);
  expect(first!.fuelLitres).toBeCloseTo(90, 9);
});

test('the flat bottom may reach to either end', () => {
  const alike = { '40': 40, '50': 40.1, '60': 40.2, '70': 40.1, '80': 40.2 };
  expect(engineTilts(candidates, runOf(alike), null, null).equal).toEqual({ fromDeg: 40, toDeg: 80 });
  const rising = { '40': 40, '50': 45, '60': 50, '70': 55, '80': 60 };
  expect(engineTilts(candidates, runOf(rising), null, null).equal).toEqual({ fromDeg: 40, toDeg: 40 });
});

test('a tilt as good beyond a worse one does not count', () => {
  const gap = { '40': 40.1, '50': 46, '60': 40, '70': 40.2, '80': 50 };
  expect(engineTilts(candidates, runOf(gap), null, null).equal).toEqual({ fromDeg: 60, toDeg: 70 });
});

test('the designed tilt stays where it is one of the equal ones, its ends included; otherwise the light chooses', () => {
  const choose = (designed: number | null) => engineTilts(candidates, runOf(bowl), null, designed).choose;
  for (const tiltDeg of [50, 55, 70]) expect(choose(tiltDeg)).toEqual({ tiltDeg, reason: 'as designed' });
  for (const beyond of [45, 75, null]) {
    expect(choose(beyond)).toEqual({ tiltDeg: 60, reason: 'light of the dark months' });
  }
});

test('of equally bright tilts the flattest is chosen, and none beyond the equal ones however bright', () => {
  const dull = [40, 50, 60, 70, 80].map((tiltDeg) => ({
    tiltDeg,
    name: `${tiltDeg}`,
    darkLight: tiltDeg === 80 ? 99 : 7,
  }));
  expect(engineTilts(dull, runOf(bowl), null, null).choose.tiltDeg).toBe(50);
});

const extremes = (none: Record<string, number>, full: Record<string, number>): SnowRange => ({
  none: { run: runOf(none), leaders: [] },
  full: { run: runOf(full), leaders: [] },
  steady: [],
});
const flatter = { ...bowl, '40': 40.3, '50': 40, '60': 40.2, '70': 46 };
const steeper = { ...bowl, '50': 46, '60': 40.2, '80': 40.1 };

test('what snow turns leaves the tilts that are equal whatever it does', () => {
  const { snow, choose, equal } = engineTilts(candidates, runOf(bowl), extremes(flatter, steeper), 50);
  expect(equal).toEqual({ fromDeg: 50, toDeg: 70 });
  expect(snow).toEqual({
    none: { fromDeg: 40, toDeg: 60 },
    full: { fromDeg: 60, toDeg: 80 },
    steady: { fromDeg: 60, toDeg: 60 },
  });
  expect(choose).toEqual({ tiltDeg: 60, reason: 'light of the dark months' });
});

test('where no tilt is right in both extremes, the snow of the file decides', () => {
  const flattest = { ...bowl, '40': 40, '50': 40.2, '60': 46 };
  const steepest = { ...bowl, '50': 46, '60': 46, '70': 40, '80': 40.2 };
  const { snow, choose } = engineTilts(candidates, runOf(bowl), extremes(flattest, steepest), 50);
  expect(snow!.steady).toBeNull();
  expect(choose).toEqual({ tiltDeg: 50, reason: 'as designed' });
});

test('where no engine runs, the tilts are held against each other by the load that stays dark', () => {
  const run = runOf({ '40': 0, '50': 0, '60': 0, '70': 0, '80': 0 });
  const dark = run.designs.map(({ name, years }) => ({
    name,
    years: years.map((year, i) => ({ ...year, generatorHours: 0, darkKWh: Math.abs(Number(name) - 70) + i })),
  }));
  expect(engineTilts(candidates, { ...run, designs: dark }, null, null).equal).toEqual({ fromDeg: 70, toDeg: 70 });
});

test('a level plane that is as good as others is not chosen for want of a designed tilt', () => {
  const level = [0, 10].map((tiltDeg) => ({ tiltDeg, name: `${tiltDeg}`, darkLight: tiltDeg }));
  const { choose } = engineTilts(level, runOf({ '0': 40, '10': 40.1 }), null, null);
  expect(choose).toEqual({ tiltDeg: 10, reason: 'light of the dark months' });
});
