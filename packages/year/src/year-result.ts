import type { LoadYear } from '@wintergap/loads';
import type { Site } from '@wintergap/site';
import type { Ledger, Summary } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import type { Plant } from './loop/plant.js';
import type { PreparedArray } from './prepare/prepare-array.js';
import type { ArrayLimit } from './prepare/site-limits.js';

/** A settled year: the ledger and what it was made from. */
export interface BareYear {
  site: Site;
  weather: WeatherYear;
  arrays: PreparedArray[];
  load: LoadYear;
  plant: Plant;
  ledger: Ledger;
  /** Years it took to repeat itself; `null` when it does not. */
  settledAfterYears: number | null;
}

/** A settled year with its electrical limits and its summary. */
export interface YearResult extends BareYear {
  limits: ArrayLimit[];
  summary: Summary;
}
