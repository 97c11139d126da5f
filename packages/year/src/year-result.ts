import type { LoadYear } from '@wintergap/loads';
import type { Site } from '@wintergap/site';
import type { Ledger, Summary } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import type { Plant } from './loop/plant.js';
import type { PreparedArray } from './prepare/prepare-array.js';
import type { ArrayLimit } from './prepare/site-limits.js';

/** A settled year: the summary, the ledger behind it, and what they were made from. */
export interface YearResult {
  site: Site;
  weather: WeatherYear;
  arrays: PreparedArray[];
  limits: ArrayLimit[];
  load: LoadYear;
  plant: Plant;
  ledger: Ledger;
  summary: Summary;
}
