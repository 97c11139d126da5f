import type { MeasuredLoad } from '@wintergap/loads';
import type { WeatherYear } from '@wintergap/weather';

/** What a year needs beside its design, read already: with it a year runs where there are no files, as in a browser. */
export interface YearInputs {
  weather: WeatherYear;
  /** What the file of `measuredLoad` holds; `null` where the design names none. */
  measured: MeasuredLoad | null;
}
