import { daysPerYear, OutOfRangeError } from '@wintergap/ground';
import { isTilted, type Site, type TiltedMount } from '@wintergap/site';
import type { TiltPeriod, YearResult } from '@wintergap/year';
import { snowCovers } from '../common/snow-range.js';
import { rerunOf } from '../rerun.js';

/** A year with an array tilted in one way. */
export interface TiltTrial {
  /** Light on the cells of each day, after skyline, glass, snow and dirt, Wh/m2. */
  dailyWhM2: Float64Array;
}

/** The file's years of one array's tilts; each is run once. */
export interface TiltTrials {
  arrayName: string;
  mount: 'fixed' | 'pole';
  tiltsAsDesigned: TiltPeriod[];
  /** What the mount can do. */
  limits: { fromDeg: number; toDeg: number };
  /** Whether snow ever lies on the array in the file's year. */
  snowLies: boolean;
  /** Of the design as it is. */
  darkSeason: YearResult['summary']['darkSeason'];
  at(tilts: readonly TiltPeriod[]): TiltTrial;
  /** Light on this array in another design of the place. */
  lightOf(site: Site): TiltTrial;
  designAt(tilts: readonly TiltPeriod[]): Site;
}

type SiteArray = Site['arrays'][number];

/** @throws OutOfRangeError when there is no such array, or its mount leaves no tilt to choose */
export function tiltTrials(design: Site, wanted: string | undefined): TiltTrials {
  const { array, mount } = arrayToTilt(design, wanted);
  const rerun = rerunOf();
  const own = rerun(design);
  const known = new Map<string, TiltTrial>();
  const designAt = (tilts: readonly TiltPeriod[]): Site => {
    const changed = { ...array, mount: tilted(mount, tilts) };
    return { ...design, arrays: design.arrays.map((one) => (one === array ? changed : one)) };
  };
  return {
    arrayName: array.name,
    mount: mount.kind === 'pole' ? 'pole' : 'fixed',
    tiltsAsDesigned: tiltsOf(mount),
    limits: { fromDeg: 0, toDeg: mount.maxTilt ?? 90 },
    snowLies: snowCovers([own]),
    darkSeason: own.summary.darkSeason,
    at(tilts) {
      const key = tiltKey(tilts);
      const before = known.get(key);
      if (before) return before;
      const trial = { dailyWhM2: dailyLight(rerun(designAt(tilts)), array.name) };
      known.set(key, trial);
      return trial;
    },
    lightOf: (site) => ({ dailyWhM2: dailyLight(rerun(site), array.name) }),
    designAt,
  };
}

const isOneTilt = (tilts: readonly TiltPeriod[]) => tilts.every(({ tiltDeg }) => tiltDeg === tilts[0]!.tiltDeg);

/** A name for tilts: the same all year whatever the dates, when the tilts are equal. */
export const tiltKey = (tilts: readonly TiltPeriod[]): string =>
  isOneTilt(tilts) ? `${tilts[0]!.tiltDeg}` : JSON.stringify(tilts);

function arrayToTilt({ arrays }: Site, wanted: string | undefined): { array: SiteArray; mount: TiltedMount } {
  const standing = arrays.filter(({ strings }) => strings > 0);
  const names = standing.map(({ name }) => name).join(', ');
  for (const array of standing) {
    const { mount } = array;
    if (wanted !== undefined && array.name !== wanted) continue;
    if (isTilted(mount)) return { array, mount };
    if (wanted !== undefined)
      throw new OutOfRangeError(`the mount of "${wanted}" is ${mount.kind}: it has no tilt to choose`);
  }
  throw new OutOfRangeError(
    wanted === undefined
      ? 'no array has a fixed, seasonal or pole mount, so there is no tilt to choose'
      : `no array is called "${wanted}"; there are ${names || 'none'}`,
  );
}

function tiltsOf(mount: TiltedMount): TiltPeriod[] {
  if (mount.kind === 'fixed') return [{ fromDay: 0, tiltDeg: mount.tilt }];
  const written = mount.tilts ?? [{ from: 0, tilt: mount.kind === 'pole' ? (mount.tilt ?? 0) : 0 }];
  return written.map(({ from, tilt }) => ({ fromDay: from, tiltDeg: tilt }));
}

function tilted(mount: TiltedMount, tilts: readonly TiltPeriod[]): TiltedMount {
  const periods = tilts.map(({ fromDay, tiltDeg }) => ({ from: fromDay, tilt: tiltDeg }));
  if (mount.kind !== 'pole') {
    return isOneTilt(tilts)
      ? { kind: 'fixed', tilt: tilts[0]!.tiltDeg, azimuth: mount.azimuth, maxTilt: mount.maxTilt }
      : { kind: 'seasonal', azimuth: mount.azimuth, tilts: periods, maxTilt: mount.maxTilt };
  }
  const { tilt, ...pole } = mount;
  return { ...pole, tilts: isOneTilt(tilts) ? periods.slice(0, 1) : periods };
}

function dailyLight({ arrays }: YearResult, name: string): Float64Array {
  const lit = arrays.find((array) => array.name === name)!.dc.litWm2;
  const daily = new Float64Array(daysPerYear);
  for (let h = 0; h < lit.length; h++) daily[Math.floor(h / 24)]! += lit[h]!;
  return daily;
}
