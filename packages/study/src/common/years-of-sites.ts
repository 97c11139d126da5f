import type { Site } from '@wintergap/site';
import type { PreparedCache } from '@wintergap/year';
import { type CommonYears, type CommonYearsWish, commonYears } from './common-years.js';

/**
 * The common years of several sites: those that share place and weather share their years too, made once. A variant or a
 * range may stand elsewhere or under other weather; it then has years of its own.
 */
export function yearsOfSites(asked: CommonYearsWish, prepared?: PreparedCache): (site: Site) => CommonYears {
  const known = new Map<string, CommonYears>();
  return (site) => {
    const { weather, place, snow, name } = site;
    const key = JSON.stringify([weather, place, snow.days, name]);
    const years = known.get(key) ?? commonYears(site, asked, prepared);
    known.set(key, years);
    return years;
  };
}
