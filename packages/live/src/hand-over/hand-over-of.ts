import { basename } from 'node:path';
import { readInputText } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import { readCosts } from '@wintergap/seasonal';
import { designOf, locate, partsWrittenOut, type Site, SiteError, type SiteFile, writtenDesign } from '@wintergap/site';
import type { CommonYearsWish } from '@wintergap/study';
import { measuredLoadOf, PreparedCache, siteWeatherYears } from '@wintergap/year';
import type { Change } from '../design/change.js';
import type { HandOver } from './hand-over.js';

/** What the page is to begin with. */
export interface PageWish extends CommonYearsWish {
  variant?: string;
  units: UnitSystem;
}

/**
 * Reads all that a page about a site needs.
 *
 * @throws SiteError or WeatherError for what cannot be used
 */
export function handOverOf(site: SiteFile, { variant, units, ...wish }: PageWish): HandOver {
  if (variant !== undefined && !sharesYears(site.base, designOf(site, variant))) {
    const message =
      'stands under other weather, at another place or beside another measured load than the base design: one page has one weather. Make a site file of it';
    throw new SiteError(site.file, [
      { ...locate(site.document, ['variants', variant]), path: `variants.${variant}`, message },
    ]);
  }
  const prepared = new PreparedCache();
  const { base, document, variants } = site;
  const changes = (document.content.variants ?? {}) as Record<string, Change>;
  return {
    file: basename(site.file),
    text: readInputText(site.file, 'refused'),
    written: partsWrittenOut(writtenDesign(document), document.lists),
    variants: Object.fromEntries(
      [...variants]
        .filter(([, design]) => sharesYears(base, design))
        .map(([name]) => [name, partsWrittenOut(changes[name] ?? {}, document.lists)]),
    ),
    begin: variant ?? null,
    weather: withoutPaths(base.weather),
    // Lines of files are for messages about files.
    years: siteWeatherYears(base, prepared).map(({ lineOfHour: _, ...year }) => year),
    measured: measuredLoadOf(base, prepared),
    wish,
    costs: readCosts(site) ?? null,
    units,
  };
}

/** Whether a design meets the same weather and the same measured load as the base. */
function sharesYears(base: Site, design: Site): boolean {
  const outside = ({ weather, place, measuredLoad, calendarYear, snow }: Site) =>
    JSON.stringify([weather, place, measuredLoad, calendarYear, snow.days]);
  return outside(base) === outside(design);
}

function withoutPaths(weather: Site['weather']): Site['weather'] {
  if ('months' in weather) return weather;
  const named = <File extends { written: string; path: string }>(file: File): File => {
    const name = basename(file.written);
    return { ...file, written: name, path: name };
  };
  const files = { file: named(weather.file), otherYears: weather.otherYears?.map(named) };
  return 'years' in weather ? { ...weather, ...files, years: weather.years.map(named) } : { ...weather, ...files };
}
