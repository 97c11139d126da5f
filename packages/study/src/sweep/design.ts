import { type Costs, readCosts } from '@wintergap/seasonal';
import { changedDesign, type Site, SiteError, type SiteFile } from '@wintergap/site';
import { WeatherError } from '@wintergap/weather';
import { exceededLimits, limitsUnder, PreparedCache, siteWeather } from '@wintergap/year';
import type { CommonYears } from '../common/common-years.js';
import { yearsMean } from '../common/paired-difference.js';
import { yearsOfSites } from '../common/years-of-sites.js';
import type { DesignAxis } from '../design/axis.js';
import { gridChanges, gridDesign } from '../design/grid.js';
import { bareYearUnder, figuresUnder } from '../year-figures.js';
import { type SweepColumns, type SweepRow, type SweepYears, sweepResults } from './row.js';
import { siteErrorText } from './values.js';

/** What it takes to run designs of a sweep; plain data, so that it can be handed to a worker. */
export interface SweepStart {
  site: SiteFile;
  axes: readonly DesignAxis[];
  columns: SweepColumns;
}

/** Parts kept of each kind, unless common years need more. */
const usuallyKept = 32;
const mostKept = 200;

/**
 * Prepares the running of a sweep's designs by their numbers. What is wrong with a design becomes the row's `error`; nothing
 * is thrown for it. A row depends on the sweep and the number alone.
 */
export function createSweepRunner({ site, axes, columns }: SweepStart): (number: number) => SweepRow {
  const costs: Costs | null = columns.cost ? readCosts(site) : null;
  const { years } = columns;
  const kept = usuallyKept + (years ? years.count * (site.base.arrays.length + 1) : 0);
  const prepared = new PreparedCache(Math.min(kept, mostKept));
  const yearsOf = years && yearsOfSites({ years: years.count, seed: years.seed });
  return (number) => {
    const design = gridDesign(axes, number);
    try {
      const { changes, variant } = gridChanges(axes, design.values);
      const changed = changedDesign(site, changes, variant);
      const year = bareYearUnder(changed, siteWeather(changed, prepared), prepared);
      const exceeded = exceededLimits(limitsUnder(changed, year.weather, year.plant.bank, prepared));
      const limits = [...new Set(exceeded.map(({ code }) => code))];
      const results = sweepResults(year, costs);
      const means = yearsOf && meansOver(changed, yearsOf(changed), prepared);
      return { ...design, results: { ...results, ...means }, limits, error: '' };
    } catch (error) {
      return { ...design, results: null, limits: [], error: errorText(error) };
    }
  };
}

/** What a design does over common years: means with their standard errors. */
function meansOver(site: Site, { count, weatherOf }: CommonYears, prepared: PreparedCache): SweepYears {
  const years = Array.from({ length: count }, (_, i) => figuresUnder(site, weatherOf(i), prepared));
  const of = (figure: 'generatorHours' | 'fuelLitres' | 'darkKWh') => yearsMean(years.map((year) => year[figure]));
  const [hours, fuel, dark] = [of('generatorHours'), of('fuelLitres'), of('darkKWh')];
  return {
    generatorHoursMean: hours.mean,
    generatorHoursError: hours.standardError,
    fuelLitresMean: fuel.mean,
    fuelLitresError: fuel.standardError,
    darkKWhMean: dark.mean,
    darkKWhError: dark.standardError,
  };
}

function errorText(error: unknown): string {
  if (error instanceof SiteError) return siteErrorText(error);
  if (error instanceof WeatherError) return error.message;
  return `fault of the program: ${error instanceof Error ? error.message : String(error)}`;
}
