import { dateOfDay, monthSpan } from '@wintergap/ground';
import type { SiteMount } from '@wintergap/site';
import type { Plain } from './change.js';

export const mountKinds: Readonly<Record<SiteMount['kind'], string>> = {
  fixed: 'stands fixed',
  seasonal: 'tilted by the season',
  pole: 'turns on a pole',
  'one-axis': 'turns on one axis',
  'two-axis': 'turns on two axes',
};

export type MountKind = SiteMount['kind'];

/** A tilt and the day of the year, 0 to 364, from which on it holds. */
export interface TiltFrom {
  from: number;
  tilt: number;
}

/** October and April, from which on a tilt holds where nothing says otherwise: common practice, no source. */
const turns = [monthSpan(9).fromDay, monthSpan(3).fromDay] as const;
const usualTurn = 220;
const usualLimit = 60;

/** Tilts by date, of a mount that has any; one that the whole year has counts from New Year. */
export function tiltsOf(mount: SiteMount): TiltFrom[] {
  switch (mount.kind) {
    case 'fixed':
      return [{ from: 0, tilt: mount.tilt }];
    case 'seasonal':
      return mount.tilts;
    case 'pole':
      return mount.tilts ?? [{ from: 0, tilt: mount.tilt ?? 0 }];
    default:
      return [];
  }
}

/** The tilts as a variant writes them. */
export const writtenTilts = (tilts: readonly TiltFrom[]): Plain[] =>
  tilts.map(({ from, tilt }) => ({ from: dateOfDay(from), tilt }));

/**
 * A mount of another kind in place of one, written whole: tilts and the way it faces are kept as far as the kind has them.
 *
 * @param latitude degrees, north positive
 */
export function otherMount(mount: SiteMount, kind: MountKind, latitude: number): Plain {
  const azimuth = 'azimuth' in mount ? mount.azimuth : latitude < 0 ? 0 : 180;
  switch (kind) {
    case 'fixed':
      return { kind, tilt: steepest(mount, latitude), azimuth };
    case 'seasonal':
      return { kind, azimuth, tilts: writtenTilts(twoTilts(mount, latitude)) };
    case 'pole':
      return { kind, turn: usualTurn, facing: azimuth, tilts: writtenTilts(twoTilts(mount, latitude)) };
    case 'one-axis':
      return { kind, axisTilt: 0, axisAzimuth: azimuth, limit: usualLimit };
    case 'two-axis':
      return { kind, minTilt: 0, maxTilt: 90, turn: 360 };
  }
}

function steepest(mount: SiteMount, latitude: number): number {
  const tilts = tiltsOf(mount).map(({ tilt }) => tilt);
  return tilts.length > 0 ? Math.max(...tilts) : latitudeTilt(latitude, 15);
}

function twoTilts(mount: SiteMount, latitude: number): TiltFrom[] {
  const tilts = tiltsOf(mount);
  if (tilts.length > 1) return tilts;
  const winter = Math.max(tilts[0]?.tilt ?? 0, latitudeTilt(latitude, 15));
  const [autumn, spring] = latitude < 0 ? [turns[1], turns[0]] : turns;
  return [
    { from: autumn, tilt: winter },
    { from: spring, tilt: latitudeTilt(latitude, -15) },
  ];
}

/** Steeper or flatter than the latitude, degrees: common practice, no source. */
const latitudeTilt = (latitude: number, more: number): number =>
  Math.round(Math.min(90, Math.max(0, Math.abs(latitude) + more)));
