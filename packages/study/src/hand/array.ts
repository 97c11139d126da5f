import { mustBeAbove, mustLie, OutOfRangeError } from '@wintergap/ground';

/** One month as the hand method sees it. */
export interface HandMonth {
  /** Daily load at the bus, Ah, losses included. */
  dailyLoadAh: number;
  /** Sun on the array's plane, kWh/m2 a day: hours at 1000 W/m2. */
  sunHours: number;
}

/** How a string's current at the bus follows from its data sheet. */
export type HandString =
  /** Direct connection: the current at the operating point. */
  | { connection: 'direct'; operatingA: number }
  /** Maximum-power controller: the string's power brought to the bus voltage. */
  | { connection: 'maximum-power'; powerW: number; busV: number };

export interface HandArrayQuestion {
  /** January first. */
  months: readonly HandMonth[];
  /** Array-to-load ratio wanted in the dullest month. */
  ratio: number;
  /** Share lost to dirt, mismatch, heat, cable, controller and charging. */
  losses: number;
  string: HandString;
}

export interface HandArray {
  /** The month with the most load for its sun, 0 for January: it decides. */
  month: number;
  dailyLoadAh: number;
  sunHours: number;
  /** What one string gives on a day of that month, Ah. */
  stringAh: number;
  /** Strings before they are rounded up. */
  exactStrings: number;
  strings: number;
  /** Array-to-load ratio of the whole strings in that month. */
  ratioReached: number;
}

/**
 * Array by hand: IEEE 1562, in our own words, from memory. In the month with the most load for its sun the array must
 * give the load times the array-to-load ratio; one string gives current x sun hours, less a flat share for losses.
 *
 * @returns `null` when a month with load has no sun: no array is large enough then
 */
export function handArray({ months, ratio, losses, string }: HandArrayQuestion): HandArray | null {
  if (months.length === 0) throw new OutOfRangeError('months must hold at least one month, got none');
  mustBeAbove('ratio', ratio, 0);
  if (!(losses >= 0 && losses < 1)) throw new OutOfRangeError(`losses must be 0 to below 1, got ${losses}`);
  const amps = stringAmps(string);
  let month = 0;
  let most = -1;
  for (const [m, { dailyLoadAh, sunHours }] of months.entries()) {
    mustLie(`months[${m}].dailyLoadAh`, dailyLoadAh, 0, Number.POSITIVE_INFINITY);
    mustLie(`months[${m}].sunHours`, sunHours, 0, 24);
    const loadForSun = dailyLoadAh === 0 ? 0 : dailyLoadAh / sunHours;
    if (loadForSun > most) {
      most = loadForSun;
      month = m;
    }
  }
  if (most === Number.POSITIVE_INFINITY) return null;
  const { dailyLoadAh, sunHours } = months[month]!;
  const stringAh = amps * sunHours * (1 - losses);
  const exactStrings = dailyLoadAh === 0 ? 0 : (dailyLoadAh * ratio) / stringAh;
  // Rounding of the division must not buy a string.
  const strings = Math.ceil(exactStrings - 1e-9);
  return {
    month,
    dailyLoadAh,
    sunHours,
    stringAh,
    exactStrings,
    strings,
    ratioReached: dailyLoadAh === 0 ? Number.POSITIVE_INFINITY : (strings * stringAh) / dailyLoadAh,
  };
}

function stringAmps(string: HandString): number {
  if (string.connection === 'direct') {
    mustBeAbove('operatingA', string.operatingA, 0);
    return string.operatingA;
  }
  mustBeAbove('powerW', string.powerW, 0);
  mustBeAbove('busV', string.busV, 0);
  return string.powerW / string.busV;
}
