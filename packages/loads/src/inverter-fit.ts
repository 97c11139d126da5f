import { hoursPerYear } from '@wintergap/ground';
import { checkInverter, type Inverter } from './inverter.js';
import type { LoadYear } from './load-year.js';

/** Whether an inverter can carry a year's AC load. */
export interface InverterFit {
  /** Hours whose mean load is above the rating; the excess stays dark. */
  hoursAboveRating: number;
  darkWh: number;
  /** Largest mean load of an hour, W. */
  largestHourW: number;
  /** Whether the largest start on top of the running load is more than the surge rating. */
  surgeExceeded: boolean;
  /** Whether all that may run at once in some hour is more than the rating: people then have to take turns. */
  coincidentExceeded: boolean;
}

/** Compares a year's AC load with the ratings of an inverter. */
export function inverterFit(load: LoadYear, inverter: Inverter): InverterFit {
  checkInverter(inverter);
  let hoursAboveRating = 0;
  let darkWh = 0;
  let largestHourW = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const acW = load.acW[h]!;
    largestHourW = Math.max(largestHourW, acW);
    if (acW <= inverter.powerW) continue;
    hoursAboveRating++;
    darkWh += acW - inverter.powerW;
  }
  return {
    hoursAboveRating,
    darkWh,
    largestHourW,
    surgeExceeded: load.largestSurgeW > inverter.surgeW,
    coincidentExceeded: load.coincidentAcW > inverter.powerW,
  };
}
