import type { WeatherPlace } from '../../weather-year.js';
import type { Intake, YearShelf } from '../year-shelf.js';
import { readEpw } from './read-epw.js';
import { readPower } from './read-power.js';
import { readTable } from './read-table.js';
import { readTmy3 } from './read-tmy3.js';

/** A form in which weather comes. Text is given with plain line ends and without a byte-order mark. */
export interface WeatherFormat {
  /** Whether a text is of this form, judged by its first lines. */
  recognises(text: string): boolean;
  /**
   * The columns of a text, NaN where it has no value.
   *
   * @param source name of the file, for messages
   * @param intake where the rows go, and what is known of the file's clock
   * @param site what is known of the place from elsewhere, for forms that need it to place their hours
   * @throws WeatherError with the line that cannot be used
   */
  read(text: string, source: string, intake: Intake, site: WeatherPlace): YearShelf;
}

/** The first that recognises a text reads it; the plain table takes what no other does, and says what it lacks. */
export const weatherFormats: readonly WeatherFormat[] = [
  {
    recognises: (text) => /^\s*"?-BEGIN HEADER-/i.test(text),
    read: (text, source, intake, site) => readPower(text, source, site, intake),
  },
  { recognises: (text) => /^LOCATION\s*,/i.test(text), read: readEpw },
  { recognises: (text) => /^[^\n]*\n\s*"?Date \(MM\/DD\/YYYY\)/i.test(text), read: readTmy3 },
  { recognises: () => true, read: readTable },
];
