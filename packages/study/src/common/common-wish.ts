import type { Site } from '@wintergap/site';
import type { PreparedCache } from '@wintergap/year';
import type { YearFigures } from '../year-figures.js';
import type { CommonYears } from './common-years.js';
import type { DesignThreads } from './design-threads.js';
import type { DesignYears } from './merit.js';

/** A design under the name by which it is shown. */
export interface NamedSite {
  name: string;
  site: Site;
}

/** How many common years are asked for, and what helps to run them. */
export interface CommonWish {
  /** Years to run; left out: the site's real years if it names several, otherwise `usualCommonYears`. */
  years?: number;
  /** Fixes the made years. */
  seed?: number;
  /** Threads; 1 runs in this one. The result is the same for any number. */
  workers?: number;
  /** Called after each year with how many of how many years are done. */
  onYear?: (done: number, total: number) => void;
  /** What this thread prepared for the year of the file, or in an earlier run: its weather is then not read again. */
  prepared?: PreparedCache;
  /** Years of these very designs that other threads run already: what `beginYears` gave. */
  begun?: BegunYears | null;
}

/** Designs and what they did in the same weather years. */
export interface CommonRun {
  weather: Omit<CommonYears, 'weatherOf'>;
  designs: DesignYears[];
}

/** The years of a run that are done, and the threads that do more of them. */
export interface BegunYears {
  years: YearFigures[][];
  threads: DesignThreads | null;
  /** Called with how many years are done. */
  told: (done: number) => void;
  done: number;
}
