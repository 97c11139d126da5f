import type { ArrayYearInput, ControllerYear, DcYear } from '@wintergap/array';
import type { PlaneYear } from '@wintergap/irradiance';
import type { Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import type { Outdoors } from './prepare-outdoors.js';
import { preparePlane } from './prepare-plane.js';
import { type BankRangeV, prepareCells, prepareController, prepareDc } from './prepare-power.js';
import type { PreparedCache } from './prepared-cache.js';

/** One array's year up to its controller, before the bank has a say. */
export interface PreparedArray {
  name: string;
  ratedW: number;
  plane: PlaneYear;
  /** Share of the plane covered by snow; `null` when snow is left out or unknown. */
  snowShare: Float64Array | null;
  input: ArrayYearInput;
  dc: DcYear;
  controller: ControllerYear;
  maxCurrentA: number;
  /** Tracker drive and the controller's night draw, W. */
  ownUseW: Float64Array;
}

/**
 * Runs the site's arrays from the sky to their controllers; an array without strings is left out.
 *
 * Plane, cells, power and controller are kept apart, so that a design that changes one of them, or the bank, finds again
 * what comes before it.
 */
export function prepareArrays(
  site: Site,
  weather: WeatherYear,
  outdoors: Outdoors,
  bankV: BankRangeV,
  prepared: PreparedCache,
): PreparedArray[] {
  return site.arrays.flatMap(({ name, inSeries, strings, module }, i) => {
    if (strings === 0) return [];
    const onPlane = preparePlane(site, i, weather, outdoors, prepared);
    const cellC = prepareCells(site, i, weather, prepared, onPlane);
    const ofArray = prepareDc(site, i, prepared, onPlane, cellC, weather.airC);
    const { controller, maxCurrentA, nightW } = prepareController(site, i, prepared, ofArray, outdoors.sun, bankV);
    const { driveW } = onPlane;
    return {
      name,
      ratedW: inSeries * strings * module.vmp * module.imp,
      plane: onPlane.plane,
      snowShare: onPlane.snowShare,
      input: ofArray.input,
      dc: ofArray.dc,
      controller,
      maxCurrentA,
      ownUseW: driveW === null ? nightW : driveW.map((w, h) => w + nightW[h]!),
    };
  });
}
