import { hoursPerYear } from '@wintergap/ground';
import { isTilted, type SiteMount } from '@wintergap/site';

/** A mount with its winter tilt made steeper. */
export interface SteeperMount {
  mount: SiteMount;
  /** Winter tilt, degrees, and what it was. */
  tilt: number;
  was: number;
}

/** Steepening of the winter tilt tried, degrees. */
const steeperDeg = 15;
const dayCount = hoursPerYear / 24;
/** Day of the year of the winter solstice. */
const midwinterDay = { north: 354, south: 171 };
/** The winter half of the year is this many days to either side. */
const quarterDays = 91;

/**
 * A mount with a steeper tilt for the winter half of the year, or for the period of its own tilt table that holds the
 * winter solstice. `null` for trackers that tilt by themselves and for planes that stand upright already.
 */
export function steeperWinter(mount: SiteMount, hemisphere: 'north' | 'south'): SteeperMount | null {
  if (!isTilted(mount)) return null;
  const midwinter = midwinterDay[hemisphere];
  const daysInForce = (from: number): number => (midwinter - from + dayCount) % dayCount;
  const written = mount.kind === 'fixed' ? undefined : mount.tilts;
  const summerTilt = mount.kind === 'seasonal' ? 0 : (mount.tilt ?? 0);
  const tilts = written ?? [
    { from: (midwinter - quarterDays + dayCount) % dayCount, tilt: summerTilt },
    { from: (midwinter + quarterDays) % dayCount, tilt: summerTilt },
  ];
  const inForce = tilts.reduce((a, b) => (daysInForce(b.from) < daysInForce(a.from) ? b : a));
  const was = inForce.tilt;
  const tilt = Math.min(90, was + steeperDeg);
  if (tilt === was) return null;
  const steeper = tilts.map((period) => (period === inForce ? { ...period, tilt } : period));
  if (mount.kind === 'fixed') return { mount: { kind: 'seasonal', azimuth: mount.azimuth, tilts: steeper }, tilt, was };
  if (mount.kind === 'seasonal') return { mount: { ...mount, tilts: steeper }, tilt, was };
  const { tilt: _oneTilt, ...pole } = mount;
  return { mount: { ...pole, tilts: steeper }, tilt, was };
}
