import {
  type ArrayYearInput,
  type ControllerYear,
  cableOhm,
  cellTemperatureYear,
  controllerYear,
  type DcYear,
  dcYear,
  type ModuleParameters,
  runningConductorC,
  solveModule,
} from '@wintergap/array';
import { hoursPerYear } from '@wintergap/ground';
import type { PlaneYear, SunYear } from '@wintergap/irradiance';
import { fromSite, type Site } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';
import { controllerOf } from './controller-of-site.js';
import { moduleSheet } from './module-of-site.js';
import type { PreparedPlane } from './prepare-plane.js';
import { identityOf, type PreparedCache } from './prepared-cache.js';

/** Temperature of an array's cells, degC. */
export function prepareCells(
  site: Site,
  i: number,
  weather: WeatherYear,
  prepared: PreparedCache,
  onPlane: PreparedPlane,
): Float64Array {
  const { cellModel, module } = site.arrays[i]!;
  const noctC = cellModel === 'noct' ? module.noct : undefined;
  return prepared.get('cells', [identityOf(weather), identityOf(onPlane.plane), noctC], () =>
    fromSite(site, `arrays[${i}].module`, () =>
      cellTemperatureYear(
        noctC === undefined ? { kind: 'wind' } : { kind: 'noct', noctC },
        weather.airC,
        lightInShade(onPlane.plane),
        weather.windMs,
      ),
    ),
  );
}

/** What reaches the plane past the skyline, W/m2: what warms the cells. */
function lightInShade({ planeWm2, skylineLossWm2 }: PlaneYear): Float64Array {
  const litWm2 = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) litWm2[h] = planeWm2[h]! - skylineLossWm2[h]!;
  return litWm2;
}

/** An array as wired, and what it gives at its maximum power. */
export interface PreparedDc {
  input: ArrayYearInput;
  dc: DcYear;
}

/** What an array gives at its maximum power, from the light and the warmth of its cells. */
export function prepareDc(
  site: Site,
  i: number,
  prepared: PreparedCache,
  onPlane: PreparedPlane,
  cellC: Float64Array,
  airC: Float64Array,
): PreparedDc {
  const { module, inSeries, strings, cable, losses } = site.arrays[i]!;
  const { soiling, mismatch, age, ageing } = losses;
  const wiring = [module, inSeries, strings, cable, soiling, mismatch, age, ageing];
  return prepared.get('dc', [identityOf(onPlane), identityOf(cellC), identityOf(airC), wiring], () => {
    const parameters = prepareModule(site, i, prepared);
    const ohm = fromSite(site, `arrays[${i}].cable`, () => {
      if (!cable) return 0;
      const conductorC = runningConductorC(onPlane.plane.effectiveWm2, airC, strings * module.imp, cable.size);
      return cableOhm({ lengthM: cable.length, areaMm2: cable.size, conductorC });
    });
    const input: ArrayYearInput = {
      parameters,
      inSeries,
      strings,
      cableOhm: ohm,
      effectiveWm2: onPlane.plane.effectiveWm2,
      cellC,
      soiling,
      mismatch,
      age: Math.min(1, (age / hoursPerYear) * ageing),
      ...(onPlane.snowShare && { snowShare: onPlane.snowShare }),
    };
    return { input, dc: fromSite(site, `arrays[${i}]`, () => dcYear(input)) };
  });
}

export function prepareModule(site: Site, i: number, prepared: PreparedCache): ModuleParameters {
  const { module } = site.arrays[i]!;
  return prepared.lasting('module', [module], () =>
    fromSite(site, `arrays[${i}].module`, () => solveModule(moduleSheet(module))),
  );
}

/** An array behind its controller, before the bank has a say. */
export interface PreparedController {
  controller: ControllerYear;
  /** Largest current into the bus, A. */
  maxCurrentA: number;
  /** The controller's night draw, W. */
  nightW: Float64Array;
}

/** What a controller draws while its array gives nothing, W: in dark hours, and in the dark part of those with sunrise or sunset. */
function nightDrawW({ powerW }: DcYear, upShare: Float64Array, drawW: number): Float64Array {
  return powerW.map((givenW, h) => (givenW > 0 ? drawW * (1 - upShare[h]!) : drawW));
}

/** Lowest and highest voltage a bank can have. */
export type BankRangeV = readonly [lowest: number, highest: number];

/** An array behind its controller, for a bank whose voltage stays within a range. */
export function prepareController(
  site: Site,
  i: number,
  prepared: PreparedCache,
  ofArray: PreparedDc,
  { upShare }: SunYear,
  [lowestV, highestV]: BankRangeV,
): PreparedController {
  const { input, dc } = ofArray;
  const written = site.arrays[i]!.controller;
  return prepared.get('controller', [identityOf(ofArray), identityOf(upShare), written, lowestV, highestV], () =>
    fromSite(site, `arrays[${i}].controller`, () => {
      const controller = controllerOf(written);
      return {
        controller: controllerYear(input, controller, lowestV, highestV, dc),
        maxCurrentA: controller.maxCurrentA ?? Number.POSITIVE_INFINITY,
        nightW: nightDrawW(dc, upShare, controller.nightDrawW),
      };
    }),
  );
}
