import type { WeatherPlace } from '../weather-year.js';
import type { ClockMend } from './mend/clock-mend.js';

/** How a weather file is to be read. */
export interface ReadSettings {
  /** What is known of the place from elsewhere; the file's own statements win. */
  place?: WeatherPlace;
  /** What is known to be wrong with its clock. */
  clock?: ClockMend | undefined;
  /** Fills gaps longer than those that are bridged; without it they are an error. */
  mend?: boolean | undefined;
  /** Where the file was found, for a command that a message advises; its name alone unless given. */
  path?: string | undefined;
}
