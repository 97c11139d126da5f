import { electricalLimits, type Limit, type ModuleParameters, windCellC } from '@wintergap/array';
import { fromSite, type Site, type SiteArray } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { controllerOf } from './controller-of-site.js';
import { moduleSheet } from './module-of-site.js';
import type { PreparedArray } from './prepare-array.js';
import type { PreparedCache } from './prepared-cache.js';

/** An electrical check and the array it belongs to. */
export interface ArrayLimit extends Limit {
  array: string;
}

/** Strong sun and light wind, for the hottest cells. */
const strongSunWm2 = 1000;
const lightWindMs = 1;

/** The electrical checks of every array, met or not. */
export function siteLimits(
  site: Site,
  weather: WeatherYear,
  arrays: readonly PreparedArray[],
  prepared: PreparedCache,
): ArrayLimit[] {
  const lowestC = weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity);
  const highestC = weather.airC.reduce((most, airC) => Math.max(most, airC), -Infinity);
  const recordLowC = Math.min(site.place.recordLow ?? Infinity, lowestC);
  return arrays.flatMap(({ name, input: { parameters } }) => {
    const i = site.arrays.findIndex((array) => array.name === name);
    const { module, inSeries, strings, controller, cable } = site.arrays[i]!;
    const inputs = [module, inSeries, strings, controller, cable, site.bank.voltage, recordLowC, highestC];
    const limits = prepared.get('limits', inputs, () =>
      fromSite(site, `arrays[${i}]`, () =>
        limitsOf(site.arrays[i]!, parameters, site.bank.voltage, recordLowC, highestC),
      ),
    );
    return limits.map((limit) => ({ ...limit, array: name }));
  });
}

function limitsOf(
  array: SiteArray,
  parameters: ModuleParameters,
  bankV: number,
  recordLowC: number,
  highestC: number,
): Limit[] {
  const { vocPerK, ...sheet } = moduleSheet(array.module);
  const limits = electricalLimits({
    sheet: array.module.vocPerK === undefined ? sheet : { ...sheet, vocPerK },
    parameters,
    inSeries: array.inSeries,
    strings: array.strings,
    controller: controllerOf(array.controller),
    bankV,
    recordLowC,
    hotCellC: windCellC(highestC, strongSunWm2, lightWindMs),
    cable: {
      lengthM: array.cable?.length ?? 0,
      areaMm2: array.cable?.size ?? unknownCableMm2,
      conductorC: warmConductorC,
    },
  });
  return array.cable ? limits : limits.filter(({ code }) => code !== 'conductor-current' && code !== 'voltage-drop');
}

/** Stands in where the site file names no cable; the checks that depend on it are left out. */
const unknownCableMm2 = 1000;
/** Conductors are judged warm, as code tables do. */
const warmConductorC = 75;
