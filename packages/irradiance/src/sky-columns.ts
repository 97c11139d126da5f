import { clockwiseDeg, radiansPerDegree as rad } from '@wintergap/ground';
import type { CompiledSkyline, SkyColumns } from './compiled-skyline.js';
import { horizonElevationDeg } from './horizon.js';

const columnDeg = 1;
const columnCount = 360 / columnDeg;

/** Cuts a skyline into columns. */
export function skyColumns(
  skyline: Pick<CompiledSkyline, 'fromDeg' | 'widthDeg' | 'topDeg' | 'clearLeafOn' | 'clearLeafOff' | 'horizonDeg'>,
): SkyColumns {
  const { fromDeg, widthDeg, topDeg, clearLeafOn, clearLeafOff, horizonDeg } = skyline;
  const start = new Int32Array(columnCount + 1);
  const top: number[] = [];
  const hiddenLeafOn: number[] = [];
  const hiddenLeafOff: number[] = [];
  for (let k = 0; k < columnCount; k++) {
    const azimuthDeg = (k + 0.5) * columnDeg;
    const screens = [{ topDeg: horizonElevationDeg(horizonDeg, azimuthDeg), on: 0, off: 0 }];
    for (let i = 0; i < topDeg.length; i++) {
      if (clockwiseDeg(fromDeg[i]!, azimuthDeg) > widthDeg[i]!) continue;
      screens.push({ topDeg: topDeg[i]!, on: clearLeafOn[i]!, off: clearLeafOff[i]! });
    }
    screens.sort((a, b) => a.topDeg - b.topDeg);
    for (let s = 0; s < screens.length; s++) {
      if (screens[s]!.topDeg <= 0) continue;
      // Everything that reaches at least as high stands before this layer.
      const behind = screens.slice(s);
      top.push(screens[s]!.topDeg * rad);
      hiddenLeafOn.push(1 - behind.reduce((clear, { on }) => clear * on, 1));
      hiddenLeafOff.push(1 - behind.reduce((clear, { off }) => clear * off, 1));
    }
    start[k + 1] = top.length;
  }
  return {
    start,
    top: Float64Array.from(top),
    topSquare: Float64Array.from(top, (edge) => Math.sin(edge) ** 2),
    topArc: Float64Array.from(top, (edge) => edge + Math.sin(edge) * Math.cos(edge)),
    hiddenLeafOn: Float64Array.from(hiddenLeafOn),
    hiddenLeafOff: Float64Array.from(hiddenLeafOff),
  };
}

const columnCos = Float64Array.from({ length: columnCount }, (_, k) => Math.cos((k + 0.5) * columnDeg * rad));
const columnSin = Float64Array.from({ length: columnCount }, (_, k) => Math.sin((k + 0.5) * columnDeg * rad));

/**
 * Share of an evenly bright sky's light on a plane that the skyline holds back, 0 to 1. Each bit of sky counts by the
 * cosine of its incidence on the plane; summed over columns, in closed form along each column: from the horizontal up to
 * the elevation e it is (cos(tilt) sin(e)^2 + sin(tilt) cos(turn) (e + sin(e) cos(e))) / 2, and that of the whole sky
 * pi (1 + cos(tilt)) / 2. The obstacles are taken as black.
 *
 * @param tiltDeg 0 to 90
 */
export function hiddenSkyShare(columns: SkyColumns, tiltDeg: number, azimuthDeg: number, leafOn: boolean): number {
  const { start, top, topSquare, topArc } = columns;
  const hidden = leafOn ? columns.hiddenLeafOn : columns.hiddenLeafOff;
  const cosTilt = Math.cos(tiltDeg * rad);
  const sinTilt = Math.sin(tiltDeg * rad);
  const cosAzimuth = sinTilt * Math.cos(azimuthDeg * rad);
  const sinAzimuth = sinTilt * Math.sin(azimuthDeg * rad);
  let lost = 0;
  for (let k = 0; k < columnCount; k++) {
    const from = start[k]!;
    const to = start[k + 1]!;
    if (from === to) continue;
    const toward = columnCos[k]! * cosAzimuth + columnSin[k]! * sinAzimuth;
    let lowest = 0;
    let below = 0;
    if (toward < 0) {
      // Behind the plane only the sky above the plane's own extension is in view.
      lowest = Math.atan2(-toward, cosTilt);
      if (top[to - 1]! <= lowest) continue;
      const sin = Math.sin(lowest);
      below = (cosTilt * sin * sin + toward * (lowest + sin * Math.cos(lowest))) / 2;
    }
    for (let i = from; i < to; i++) {
      if (top[i]! <= lowest) continue;
      const upTo = (cosTilt * topSquare[i]! + toward * topArc[i]!) / 2;
      lost += hidden[i]! * (upTo - below);
      below = upTo;
    }
  }
  return Math.min(1, Math.max(0, (lost * columnDeg * rad) / ((Math.PI * (1 + cosTilt)) / 2)));
}

const gridTiltDeg = 5;
const gridAzimuthDeg = 10;
const gridTilts = 90 / gridTiltDeg + 1;
const gridAzimuths = 360 / gridAzimuthDeg;

/** Room for the hidden shares by tilt and azimuth, with and without leaves. */
export const emptySkyGrid = (): Float64Array => new Float64Array(2 * gridTilts * gridAzimuths).fill(-1);

/**
 * As `hiddenSkyShare`, read from a grid of 5 degrees of tilt by 10 of azimuth that fills itself as it is used. Planes
 * that move pass thousands of orientations; between grid points the share runs straight.
 */
export function hiddenSkyShareOf(
  skyline: Pick<CompiledSkyline, 'columns' | 'skyGrid'>,
  tiltDeg: number,
  azimuthDeg: number,
  leafOn: boolean,
): number {
  const row = Math.min(gridTilts - 2, Math.max(0, Math.floor(tiltDeg / gridTiltDeg)));
  const along = tiltDeg / gridTiltDeg - row;
  const column = Math.floor(clockwiseDeg(0, azimuthDeg) / gridAzimuthDeg) % gridAzimuths;
  const across = clockwiseDeg(0, azimuthDeg) / gridAzimuthDeg - column;
  const next = (column + 1) % gridAzimuths;
  const low = (1 - across) * node(skyline, row, column, leafOn) + across * node(skyline, row, next, leafOn);
  if (along === 0) return low;
  const high = (1 - across) * node(skyline, row + 1, column, leafOn) + across * node(skyline, row + 1, next, leafOn);
  return low + along * (high - low);
}

function node(
  { columns, skyGrid }: Pick<CompiledSkyline, 'columns' | 'skyGrid'>,
  row: number,
  column: number,
  leafOn: boolean,
): number {
  const at = ((leafOn ? gridTilts : 0) + row) * gridAzimuths + column;
  let share = skyGrid[at]!;
  if (share < 0) {
    share = hiddenSkyShare(columns, row * gridTiltDeg, column * gridAzimuthDeg, leafOn);
    skyGrid[at] = share;
  }
  return share;
}
