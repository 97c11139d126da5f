import type { Site } from '@wintergap/site';
import type { TiltPeriod } from '@wintergap/year';

type SiteArray = Site['arrays'][number];
export type SiteMount = SiteArray['mount'];

/** One way to mount an array. */
export interface MountWay {
  name: string;
  kind: 'fixed' | 'seasonal' | 'tracking';
  mount: SiteMount;
  /** The same mount held still through the dark season, facing the equator; `null` where nothing moves. */
  stuck: SiteMount | null;
}

/** What the ways of mounting are built from. */
export interface MountTilts {
  /** Of a plane that is never moved, degrees. */
  fixedDeg: number;
  /** The dark season's tilt and the bright season's, with their dates. */
  seasons: readonly [dark: TiltPeriod, bright: TiltPeriod];
  /** First and last day of the dark season, days of the year from 0. */
  darkDays: { from: number; to: number };
}

/** The sun's whole daily turn that a pole follows, degrees; common practice, no source. */
const poleTurn = 220;

/** The mounts that stand for choice at a place, for the same modules; the plainest first. */
export function mountWays(latitude: number, { fixedDeg, seasons, darkDays }: MountTilts): MountWay[] {
  const azimuth = latitude < 0 ? 0 : 180;
  const [dark, bright] = seasons;
  const tilts = [dark, bright].map(({ fromDay, tiltDeg }) => ({ from: fromDay, tilt: tiltDeg }));
  const stuck = (tilt: number) => [{ ...darkDays, azimuth, tilt }];
  const pole: SiteMount = { kind: 'pole', turn: poleTurn, facing: azimuth, tilts };
  const oneAxis: SiteMount = { kind: 'one-axis', axisTilt: 0, axisAzimuth: azimuth, limit: 60 };
  const twoAxis: SiteMount = { kind: 'two-axis', minTilt: 0, maxTilt: 90, turn: 360 };
  return [
    { name: `fixed at ${fixedDeg}`, kind: 'fixed', mount: { kind: 'fixed', tilt: fixedDeg, azimuth }, stuck: null },
    { name: 'fixed, vertical', kind: 'fixed', mount: { kind: 'fixed', tilt: 90, azimuth }, stuck: null },
    {
      name: `by season, ${dark.tiltDeg} and ${bright.tiltDeg}`,
      kind: 'seasonal',
      mount: { kind: 'seasonal', azimuth, tilts },
      stuck: null,
    },
    { name: 'pole', kind: 'tracking', mount: pole, stuck: { ...pole, stuck: stuck(dark.tiltDeg) } },
    { name: 'one axis, level', kind: 'tracking', mount: oneAxis, stuck: { ...oneAxis, stuck: stuck(0) } },
    { name: 'two axes', kind: 'tracking', mount: twoAxis, stuck: { ...twoAxis, stuck: stuck(fixedDeg) } },
  ];
}

/** The design with one array on another mount. */
export function withMount(design: Site, array: SiteArray, mount: SiteMount): Site {
  return { ...design, arrays: design.arrays.map((one) => (one === array ? { ...one, mount } : one)) };
}
