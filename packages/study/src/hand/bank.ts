import { mustBeAbove, mustBeShare, mustLie } from '@wintergap/ground';
import { temperatureFactor } from './temperature.js';

/** What the hand method wants to know of load and bank. */
export interface HandBankQuestion {
  /** Daily load at the bus, Ah, losses of inverter and converter included. */
  dailyLoadAh: number;
  /** Days the bank must carry it without sun. */
  autonomyDays: number;
  /** Deepest discharge allowed at the end of those days, above 0 and up to 1. */
  deepestDischarge: number;
  /** Deepest discharge allowed on a usual day; 0.2 is customary for lead-acid. `null` when nothing limits it. */
  dailyDischarge: number | null;
  /** Share of the rated capacity at which the bank counts as worn out; 0.8 is customary. */
  endOfLife: number;
  /** Lowest temperature the bank works at, degC. `null` leaves the temperature factor out (not lead-acid). */
  lowestC: number | null;
  /** Spare capacity for what is not known, 1 or more; 1.1 to 1.25 is customary. */
  margin: number;
  /** Current drawn while the bank carries the load alone, A; the daily load spread over the day when left out. */
  runningA?: number;
}

/** The steps of the method, in its order. */
export interface HandBank {
  /** Load over the days of autonomy, Ah. */
  unadjustedAh: number;
  /** Bank that would then be down to its deepest discharge, Ah. */
  forDeepestDischargeAh: number;
  /** Bank that cycles no deeper than the daily limit, Ah; 0 without one. */
  forDailyDischargeAh: number;
  /** Bank that holds the unadjusted capacity at the end of its life, Ah. */
  forEndOfLifeAh: number;
  /** Which of the three is the largest. */
  decidedBy: 'deepest discharge' | 'daily discharge' | 'end of life';
  temperatureFactor: number;
  margin: number;
  /** The capacity to buy, Ah, at the discharge time below. */
  capacityAh: number;
  /** Discharge time at which the maker's table must give that capacity, h. */
  dischargeTimeH: number;
}

/**
 * Lead-acid bank by hand: IEEE 1013, in our own words, from memory. Load times days; divided in turn by the deepest
 * discharge and by the end-of-life share, and the daily load by the daily discharge; the largest of the three, times
 * the temperature factor and a margin. The rate comes last: capacity over running current is the discharge time at
 * which that capacity is to be read from the maker's table.
 */
export function handBank(question: HandBankQuestion): HandBank {
  const { dailyLoadAh, autonomyDays, deepestDischarge, dailyDischarge, endOfLife, lowestC, margin } = question;
  const runningA = question.runningA ?? dailyLoadAh / 24;
  mustBeAbove('dailyLoadAh', dailyLoadAh, 0);
  mustBeAbove('autonomyDays', autonomyDays, 0);
  mustBeAbove('runningA', runningA, 0);
  mustBeShare('deepestDischarge', deepestDischarge);
  mustBeShare('endOfLife', endOfLife);
  if (dailyDischarge !== null) mustBeShare('dailyDischarge', dailyDischarge);
  mustLie('margin', margin, 1, 3);

  const unadjustedAh = dailyLoadAh * autonomyDays;
  const forDeepestDischargeAh = unadjustedAh / deepestDischarge;
  const forDailyDischargeAh = dailyDischarge === null ? 0 : dailyLoadAh / dailyDischarge;
  const forEndOfLifeAh = unadjustedAh / endOfLife;
  const largest = Math.max(forDeepestDischargeAh, forDailyDischargeAh, forEndOfLifeAh);
  const factor = lowestC === null ? 1 : temperatureFactor(lowestC);
  const capacityAh = largest * factor * margin;
  return {
    unadjustedAh,
    forDeepestDischargeAh,
    forDailyDischargeAh,
    forEndOfLifeAh,
    decidedBy:
      largest === forDeepestDischargeAh
        ? 'deepest discharge'
        : largest === forEndOfLifeAh
          ? 'end of life'
          : 'daily discharge',
    temperatureFactor: factor,
    margin,
    capacityAh,
    dischargeTimeH: capacityAh / runningA,
  };
}
