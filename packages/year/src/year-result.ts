import type { LoadYear } from '@wintergap/loads';
import type { Ledger, Summary } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import type { ArrayStage } from './array-stage.js';
import type { ArrayLimit } from './limits-stage.js';
import type { Plant } from './plant.js';
import type { Site } from './schema.js';

/** A settled year: the summary, the ledger behind it, and what they were made from. */
export interface YearResult {
  site: Site;
  weather: WeatherYear;
  arrays: ArrayStage[];
  limits: ArrayLimit[];
  load: LoadYear;
  plant: Plant;
  ledger: Ledger;
  summary: Summary;
}
