import { hoursPerYear } from '@wintergap/ground';
import type { MonthSpread } from '@wintergap/weather';
import { simulateSite } from '@wintergap/year';
import { type YearFigures, yearFigures } from '../year-figures.js';
import { type ManyYearsSettings, manyYears } from './many-years.js';
import { type Ranked, type RankedFigure, rankedFigures, rankYears } from './rank.js';
import { type ShareRange, shareRange } from './share-range.js';
import { createWeatherYears, type OutlookTask, type OutlookWeather } from './years.js';

/** One design over many weather years. */
export interface Outlook {
  name: string;
  hasGenerator: boolean;
  weather: OutlookWeather;
  /** The spread of sunshine that the months of the years were given, and where it is from; `null` for none. */
  spread: MonthSpread | null;
  /** The year of the site's file, or of its means, as it is; `null` when the years are the site's real ones. */
  ownYear: YearFigures | null;
  years: YearFigures[];
  ranked: Record<RankedFigure, Ranked>;
  /**
   * Loss-of-load probability, the share of all hours in which some load stays dark (the time share, as IEEE and IEC
   * texts on reliability count it), and the share of the load's energy that stays dark (the energy share).
   */
  lossOfLoad: { timeShare: number; energyShare: number; years: ShareRange };
  /** `null` when the site file states no `fuel.stored`. */
  fuelStore: { storedLitres: number; runsOut: ShareRange } | null;
  /** How the one-in-ten figure settled as years were added: of generator hours, or of dark hours without an engine. */
  settling: { figure: RankedFigure; steps: { years: number; usual: number; oneInTen: number }[] };
}

/**
 * Runs a design through many weather years and ranks them. Each year begins as it ends, so years do not carry charge
 * into each other, and the fuel store is taken as filled once a year.
 *
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function outlookOf(task: OutlookTask, settings: ManyYearsSettings = {}): Promise<Outlook> {
  const years = await manyYears(task, settings);
  const { site, weather } = task;
  const { spread } = createWeatherYears(site, weather);
  const ownYear = weather.kind === 'real' ? null : yearFigures(simulateSite(site));
  return outlookFrom(task, years, { spread, ownYear });
}

/** Ranks years that have been run. */
export function outlookFrom(
  { site, weather }: OutlookTask,
  years: YearFigures[],
  { spread, ownYear }: Pick<Outlook, 'spread' | 'ownYear'> = { spread: null, ownYear: null },
): Outlook {
  const figures = Object.keys(rankedFigures) as RankedFigure[];
  const sum = (figure: 'darkHours' | 'darkKWh' | 'loadKWh') => years.reduce((total, year) => total + year[figure], 0);
  const stored = site.generator?.fuel.stored;
  const loadKWh = sum('loadKWh');
  return {
    name: site.name,
    hasGenerator: site.generator !== undefined,
    weather,
    spread,
    ownYear,
    years,
    ranked: Object.fromEntries(figures.map((figure) => [figure, rankYears(years, figure)])) as Outlook['ranked'],
    lossOfLoad: {
      timeShare: sum('darkHours') / (hoursPerYear * years.length),
      energyShare: loadKWh === 0 ? 0 : sum('darkKWh') / loadKWh,
      years: shareRange(years.filter(({ darkHours }) => darkHours > 0).length, years.length),
    },
    fuelStore:
      stored === undefined
        ? null
        : {
            storedLitres: stored,
            runsOut: shareRange(years.filter(({ fuelLitres }) => fuelLitres > stored).length, years.length),
          },
    settling: settlingOf(years, site.generator ? 'generatorHours' : 'darkHours'),
  };
}

/** The figure from the first eighth, quarter and half of the years, and from all, but not from fewer than ten. */
function settlingOf(years: readonly YearFigures[], figure: RankedFigure): Outlook['settling'] {
  const counts = [years.length];
  while (counts.length < 4 && counts[0]! >= 20) counts.unshift(Math.floor(counts[0]! / 2));
  const steps = counts.map((count) => {
    const { usual, oneInTen } = rankYears(years.slice(0, count), figure);
    return { years: count, usual: usual.value, oneInTen: oneInTen.value };
  });
  return { figure, steps };
}
