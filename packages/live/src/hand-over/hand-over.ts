import type { UnitSystem } from '@wintergap/quantity';
import type { Costs } from '@wintergap/seasonal';
import type { Site } from '@wintergap/site';
import type { CommonYearsWish } from '@wintergap/study';
import type { YearInputs } from '@wintergap/year';
import type { Change, Plain } from '../design/change.js';

/** Everything the page needs of a site, read already: the browser opens no files, and learns no paths. */
export interface HandOver {
  /** The site file's name, without its folder. */
  file: string;
  /** The site file as it stands there. */
  text: string;
  /** The base design as written. */
  written: Plain;
  /** What the file's variants change, by name; those under other weather or at other places are not among them. */
  variants: Record<string, Change>;
  /** The variant that the page begins with; `null` for the base. */
  begin: string | null;
  /** The weather key, with names for files where it had paths. */
  weather: Site['weather'];
  /** The real years of the site, that of `year` first, and the measured load. */
  years: YearInputs['weather'][];
  measured: YearInputs['measured'];
  wish: CommonYearsWish;
  costs: Costs | null;
  units: UnitSystem;
}
