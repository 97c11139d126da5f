import { electricalLimits, type Limit, windCellC } from '@wintergap/array';
import type { Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { type ArrayStage, controllerOf, moduleSheet } from './array-stage.js';

/** An electrical check and the array it belongs to. */
export interface ArrayLimit extends Limit {
  array: string;
}

/** Strong sun and light wind, for the hottest cells. */
const strongSunWm2 = 1000;
const lightWindMs = 1;

/** The electrical checks of every array, met or not. */
export function siteLimits(site: Site, weather: WeatherYear, arrays: readonly ArrayStage[]): ArrayLimit[] {
  const lowestC = weather.airC.reduce((least, airC) => Math.min(least, airC), Infinity);
  const highestC = weather.airC.reduce((most, airC) => Math.max(most, airC), -Infinity);
  return arrays.flatMap((stage) => {
    const array = site.arrays.find(({ name }) => name === stage.name)!;
    const { vocPerK, ...sheet } = moduleSheet(array.module);
    const limits = electricalLimits({
      sheet: array.module.vocPerK === undefined ? sheet : { ...sheet, vocPerK },
      parameters: stage.input.parameters,
      inSeries: array.inSeries,
      strings: array.strings,
      controller: controllerOf(array.controller),
      bankV: site.bank.voltage,
      recordLowC: Math.min(site.place.recordLow ?? Infinity, lowestC),
      hotCellC: windCellC(highestC, strongSunWm2, lightWindMs),
      cable: {
        lengthM: array.cable?.length ?? 0,
        areaMm2: array.cable?.size ?? unknownCableMm2,
        conductorC: warmConductorC,
      },
    });
    const known = array.cable
      ? limits
      : limits.filter(({ code }) => code !== 'conductor-current' && code !== 'voltage-drop');
    return known.map((limit) => ({ ...limit, array: array.name }));
  });
}

/** Stands in where the site file names no cable; the checks that depend on it are left out. */
const unknownCableMm2 = 1000;
/** Conductors are judged warm, as code tables do. */
const warmConductorC = 75;
