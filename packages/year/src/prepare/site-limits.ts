import { electricalLimits, type Limit, type LimitsInput, type ModuleParameters, windCellC } from '@wintergap/array';
import type { Bank } from '@wintergap/battery';
import { daysPerYear } from '@wintergap/ground';
import { fromSite, type Site, type SiteArray } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { stages } from '../loop/charging.js';
import { controllerOf } from './controller-of-site.js';
import { moduleSheet } from './module-of-site.js';
import { prepareBank } from './prepare-bank.js';
import { prepareModule } from './prepare-power.js';
import { PreparedCache } from './prepared-cache.js';
import { siteWeather } from './site-weather.js';

/** An electrical check and the array it belongs to. */
export interface ArrayLimit extends Limit {
  array: string;
}

/** A limit with the name of its array, as every page says it. */
export const saidOfLimit = ({ array, text }: ArrayLimit): string => `${array}: ${text}`;

/** Strong sun and light wind, for the hottest cells. */
const strongSunWm2 = 1000;
const lightWindMs = 1;

/**
 * The electrical checks of every array of a design, met or not, under its own weather. No year is run for them.
 *
 * @throws SiteError for values that do not fit together, WeatherError for weather that cannot be used
 */
export function siteLimits(site: Site, prepared: PreparedCache = new PreparedCache()): ArrayLimit[] {
  const weather = siteWeather(site, prepared);
  const { bank } = fromSite(site, 'bank', () => prepareBank(site, weather.airC, prepared));
  return limitsUnder(site, weather, bank, prepared);
}

/** The limits that a design must not exceed and does: such a design is not to be built. */
export const exceededLimits = (limits: readonly ArrayLimit[]): ArrayLimit[] =>
  limits.filter(({ level }) => level === 'exceeded');

/** The electrical checks of every array with modules under a given weather. */
export function limitsUnder(site: Site, weather: WeatherYear, bank: Bank, prepared: PreparedCache): ArrayLimit[] {
  const lowestC = weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity);
  const limitsOfPlace: PlaceAndBank = {
    bankV: site.bank.voltage,
    absorptionHotV: bank.setVoltage(stages.absorption, hottestDayMeanC(weather.airC)),
    absorptionV: bank.setVoltage(stages.absorption, 25),
    recordLowC: Math.min(site.place.recordLow ?? Infinity, lowestC),
    recordIsUnknown: site.place.recordLow === undefined,
    hotCellC: windCellC(
      weather.airC.reduce((most, airC) => Math.max(most, airC), -Infinity),
      strongSunWm2,
      lightWindMs,
    ),
  };
  return site.arrays.flatMap((array, i) => {
    if (array.strings === 0) return [];
    const { module, inSeries, strings, controller, cable } = array;
    const inputs = [module, inSeries, strings, controller, cable, limitsOfPlace];
    const limits = prepared.get('limits', inputs, () =>
      fromSite(site, `arrays[${i}]`, () => limitsOf(array, prepareModule(site, i, prepared), limitsOfPlace)),
    );
    return limits.map((limit) => ({ ...limit, array: array.name }));
  });
}

type PlaceAndBank = Pick<
  LimitsInput,
  'bankV' | 'absorptionHotV' | 'absorptionV' | 'recordLowC' | 'recordIsUnknown' | 'hotCellC'
>;

/** Mean air temperature of the warmest day: about what a bank out of the sun has when cells are hottest. */
function hottestDayMeanC(airC: Float64Array): number {
  let hottest = Number.NEGATIVE_INFINITY;
  for (let day = 0; day < daysPerYear; day++) {
    let sum = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) sum += airC[h]!;
    hottest = Math.max(hottest, sum / 24);
  }
  return hottest;
}

function limitsOf(array: SiteArray, parameters: ModuleParameters, ofPlace: PlaceAndBank): Limit[] {
  const { vocPerK, ...sheet } = moduleSheet(array.module);
  const limits = electricalLimits({
    sheet: array.module.vocPerK === undefined ? sheet : { ...sheet, vocPerK },
    parameters,
    inSeries: array.inSeries,
    strings: array.strings,
    controller: controllerOf(array.controller),
    ...ofPlace,
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
