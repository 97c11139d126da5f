import type { Motor, Mount } from '@wintergap/mounts';
import type { SiteMount } from './schema/array.js';

/** The site file's mount in the words of the mounts package. */
export function mountOf(site: SiteMount): Mount {
  switch (site.kind) {
    case 'fixed':
      return { kind: 'fixed', tiltDeg: site.tilt, azimuthDeg: site.azimuth };
    case 'seasonal':
      return { kind: 'seasonal', azimuthDeg: site.azimuth, tilts: tiltPeriods(site.tilts) };
    case 'pole':
      return {
        kind: 'pole',
        tilts: tiltPeriods(site.tilts ?? [{ from: 0, tilt: site.tilt ?? 0 }]),
        turnDeg: site.turn,
        ...(site.facing !== undefined && { facingDeg: site.facing }),
        ...motorOf(site),
      };
    case 'one-axis':
      return {
        kind: 'one-axis',
        axisTiltDeg: site.axisTilt,
        axisAzimuthDeg: site.axisAzimuth,
        limitDeg: site.limit,
        ...motorOf(site),
      };
    case 'two-axis':
      return {
        kind: 'two-axis',
        minTiltDeg: site.minTilt,
        maxTiltDeg: site.maxTilt,
        turnDeg: site.turn,
        ...motorOf(site),
      };
  }
}

function motorOf({ drive, stowAbove, stuck }: Extract<SiteMount, { kind: 'pole' | 'one-axis' | 'two-axis' }>): Motor {
  return {
    ...(drive !== undefined && { drive: { kind: 'while-turning' as const, powerW: drive } }),
    ...(stowAbove !== undefined && { stowAboveMs: stowAbove }),
    ...(stuck && {
      stuck: stuck.map(({ from, to, azimuth, tilt }) => ({
        fromDay: from,
        toDay: to,
        azimuthDeg: azimuth,
        ...(tilt !== undefined && { tiltDeg: tilt }),
      })),
    }),
  };
}

const tiltPeriods = (tilts: readonly { from: number; tilt: number }[]) =>
  tilts.map(({ from, tilt }) => ({ fromDay: from, tiltDeg: tilt }));
