import { daysPerYear, hoursPerYear, mustLie, OutOfRangeError } from '@wintergap/ground';

export interface LookAhead {
  /** Sun of each day, Wh/m2, on the plane or on the flat: the same as `dullBelowWhM2`. */
  dailySunWhM2: Float64Array;
  /** A day with less sun than this is dull. */
  dullBelowWhM2: number;
  /** Whether tomorrow is known, or guessed to be like the last day that was seen. */
  honesty: 'perfect' | 'persistence';
}

/** From this hour on, a person knows what today's sun was. */
const todayKnownFromHour = 18;

/**
 * 1 for each hour of the year in which tomorrow is expected to be dull, 0 for the others. A perfect forecast is the
 * best case; persistence (tomorrow will be like yesterday, and from 18:00 on like today) is what no forecast costs.
 * The day after 31 December is 1 January.
 */
export function lookAheadMask({ dailySunWhM2, dullBelowWhM2, honesty }: LookAhead): Uint8Array {
  if (dailySunWhM2.length !== daysPerYear) {
    throw new OutOfRangeError(`dailySunWhM2 must hold ${daysPerYear} days, got ${dailySunWhM2.length}`);
  }
  for (let day = 0; day < daysPerYear; day++) mustLie(`dailySunWhM2 of day ${day}`, dailySunWhM2[day]!, 0, 50_000);
  mustLie('dullBelowWhM2', dullBelowWhM2, 0, 50_000);
  const mask = new Uint8Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    const today = Math.floor(h / 24);
    const seen = h % 24 < todayKnownFromHour ? today + daysPerYear - 1 : today;
    const guide = honesty === 'perfect' ? today + 1 : seen;
    if (dailySunWhM2[guide % daysPerYear]! < dullBelowWhM2) mask[h] = 1;
  }
  return mask;
}
