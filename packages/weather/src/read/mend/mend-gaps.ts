import { daysPerYear, hoursPerYear } from '@wintergap/ground';
import type { SunYear } from '@wintergap/irradiance';
import type { Gap } from './fill-gaps.js';

/** Known hours of daylight of a day from which its brightness can be told. */
const enoughKnownWm2 = 100;
/** A day is not made brighter or duller than its neighbours by more than this. */
const mostScale = 3;

/**
 * Fills hours without irradiance from the same hours of the nearest days before and after that have them, as shares of
 * the light above the air where the sun is known, scaled to what the day itself has in its known hours. The three columns
 * are scaled alike, so what closed in the neighbours closes here. Common practice, no source.
 *
 * @param columns global, beam and diffuse; NaN where missing, global and diffuse missing together
 */
export function mendIrradiance(columns: readonly Float64Array[], sun: SunYear | null): void {
  const known = columns.map((values) => values.slice());
  const [ghi] = known;
  const scales = new Map<number, number>();
  for (let h = 0; h < hoursPerYear; h++) {
    if (!columns.some((values) => Number.isNaN(values[h]!))) continue;
    const day = Math.floor(h / 24);
    let scale = scales.get(day);
    if (scale === undefined) {
      scale = dayScale(ghi!, day, sun);
      scales.set(day, scale);
    }
    for (let c = 0; c < columns.length; c++) {
      if (Number.isNaN(columns[c]![h]!)) columns[c]![h] = scale * (likeNeighbours(known[c]!, h, sun, c !== 1) ?? 0);
    }
  }
}

/** Mean of the same hour of the nearest known days on both sides, brought to the sun of this hour; `null` without any. */
function likeNeighbours(values: Float64Array, h: number, sun: SunYear | null, horizontal: boolean): number | null {
  let sum = 0;
  let found = 0;
  for (const step of [-24, 24]) {
    for (let days = 1; days < daysPerYear / 2; days++) {
      const other = (h + step * days + hoursPerYear) % hoursPerYear;
      if (Number.isNaN(values[other]!)) continue;
      const there = sun && horizontal ? sun.meanCosZenith[other]! : 1;
      const here = sun && horizontal ? sun.meanCosZenith[h]! : 1;
      if (there > 0 && here > 0) sum += values[other]! * Math.min(2, here / there);
      found++;
      break;
    }
  }
  return found > 0 ? sum / found : null;
}

function dayScale(ghi: Float64Array, day: number, sun: SunYear | null): number {
  let own = 0;
  let neighbours = 0;
  for (let h = day * 24; h < day * 24 + 24; h++) {
    if (Number.isNaN(ghi[h]!)) continue;
    own += ghi[h]!;
    neighbours += likeNeighbours(ghi, h, sun, true) ?? 0;
  }
  if (neighbours < enoughKnownWm2) return 1;
  return Math.min(mostScale, Math.max(1 / mostScale, own / neighbours));
}

/** Known days on each side from which the daily wave is taken. */
const waveDays = 5;

/**
 * Fills a gap with the daily wave of the days around it, on a straight line from the last known hour to the next: the
 * departures from the wave at both ends are joined. Common practice, no source.
 */
export function mendByWave(values: Float64Array, gap: Gap, least: number = -Infinity): void {
  const wave = dailyWave(values, gap);
  const before = (gap.start + hoursPerYear - 1) % hoursPerYear;
  const after = (gap.start + gap.hours) % hoursPerYear;
  const from = values[before]! - wave[before % 24]!;
  const to = values[after]! - wave[after % 24]!;
  for (let i = 0; i < gap.hours; i++) {
    const h = (gap.start + i) % hoursPerYear;
    values[h] = Math.max(least, wave[h % 24]! + from + ((to - from) * (i + 1)) / (gap.hours + 1));
  }
}

/** Mean departure of each hour of the day from its day's mean, over the whole days next to the gap. */
function dailyWave(values: Float64Array, { start, hours }: Gap): Float64Array {
  const wave = new Float64Array(24);
  let days = 0;
  const firstDay = Math.floor(start / 24);
  const lastDay = Math.floor((start + hours - 1) / 24);
  const add = (day: number): boolean => {
    const from = (((day % daysPerYear) + daysPerYear) % daysPerYear) * 24;
    let sum = 0;
    for (let h = from; h < from + 24; h++) sum += values[h]!;
    if (Number.isNaN(sum)) return false;
    for (let k = 0; k < 24; k++) wave[k]! += values[from + k]! - sum / 24;
    days++;
    return true;
  };
  for (let step = 1, found = 0; found < waveDays && step < 60; step++) if (add(firstDay - step)) found++;
  for (let step = 1, found = 0; found < waveDays && step < 60; step++) if (add(lastDay + step)) found++;
  return days > 0 ? wave.map((sum) => sum / days) : wave;
}
