import { hoursPerYear, monthSpan, OutOfRangeError } from '@wintergap/ground';
import type { ModuleParameters } from './translation.js';

/** One array as wired, and the light and warmth it gets: what `dcYear` and `voltageGridYear` work from. */
export interface ArrayYearInput {
  parameters: ModuleParameters;
  inSeries: number;
  strings: number;
  /** Cable between array and controller, both conductors, ohm; see `cableOhm`. */
  cableOhm: number;
  /** Irradiance behind clean glass without snow, W/m2. */
  effectiveWm2: Float64Array;
  cellC: Float64Array;
  /** Share of light lost to dirt, one number or one for each month. */
  soiling?: number | readonly number[];
  /** Share of the plane covered by snow, hourly. */
  snowShare?: Float64Array;
  /** Share of power lost because modules differ. */
  mismatch?: number;
  /** Share of power lost since the modules were new. */
  age?: number;
}

/** Throws a RangeError for wiring, shares or arrays that cannot be; every hourly value is looked at once. */
export function checkArrayYearInput(input: ArrayYearInput): void {
  const { inSeries, strings, cableOhm, effectiveWm2, cellC, snowShare, soiling } = input;
  if (!(Number.isInteger(inSeries) && inSeries >= 1)) {
    throw new OutOfRangeError(`inSeries must be a whole number from 1, got ${inSeries}`);
  }
  if (!(Number.isInteger(strings) && strings >= 1)) {
    throw new OutOfRangeError(`strings must be a whole number from 1, got ${strings}`);
  }
  if (!(cableOhm >= 0 && cableOhm < 1000)) throw new OutOfRangeError(`cableOhm must be 0 to 1000, got ${cableOhm}`);
  const n = effectiveWm2.length;
  if (cellC.length !== n)
    throw new OutOfRangeError(`cellC must have ${n} hours like effectiveWm2, got ${cellC.length}`);
  for (let h = 0; h < n; h++) {
    if (!(effectiveWm2[h]! >= 0 && effectiveWm2[h]! <= 3000)) {
      throw new OutOfRangeError(`effectiveWm2 of hour ${h} must be 0 to 3000, got ${effectiveWm2[h]}`);
    }
    if (!(cellC[h]! >= -100 && cellC[h]! <= 150)) {
      throw new OutOfRangeError(`cellC of hour ${h} must be -100 to 150, got ${cellC[h]}`);
    }
  }
  if (snowShare) {
    if (snowShare.length !== n) throw new OutOfRangeError(`snowShare must have ${n} hours, got ${snowShare.length}`);
    for (let h = 0; h < n; h++) {
      const share = snowShare[h]!;
      // What an hour is called is put into words for a wrong one alone.
      if (!(share >= 0 && share <= 1)) checkShare(share, `snowShare of hour ${h}`);
    }
  }
  checkShare(input.mismatch ?? 0, 'mismatch');
  checkShare(input.age ?? 0, 'age');
  if (typeof soiling === 'object') {
    if (soiling.length !== 12 || n !== hoursPerYear) {
      throw new OutOfRangeError(
        `soiling by month needs 12 shares and ${hoursPerYear} hours, got ${soiling.length} and ${n}`,
      );
    }
    for (const share of soiling) checkShare(share, 'soiling');
  } else checkShare(soiling ?? 0, 'soiling');
}

function checkShare(value: number, name: string): void {
  if (!(value >= 0 && value <= 1)) throw new OutOfRangeError(`${name} must be 0 to 1, got ${value}`);
}

/**
 * Dirt and snow take light: the irradiance on the cells, W/m2. Covered and clear parts are averaged, as though the
 * snow lay evenly; bypass diodes and the rows that a partly covered module loses are not followed.
 */
export function lightOnCells(input: ArrayYearInput): Float64Array {
  const { effectiveWm2, snowShare } = input;
  const litWm2 = dirtyLight(input);
  if (snowShare) for (let h = 0; h < effectiveWm2.length; h++) litWm2[h]! *= 1 - snowShare[h]!;
  return litWm2;
}

/** Irradiance behind dirty glass, before snow, W/m2. */
export function dirtyLight(input: ArrayYearInput): Float64Array {
  const lightWm2 = input.effectiveWm2.slice();
  const { soiling = 0 } = input;
  if (typeof soiling === 'number') {
    for (let h = 0; h < lightWm2.length; h++) lightWm2[h]! *= 1 - soiling;
    return lightWm2;
  }
  for (let month = 0; month < 12; month++) {
    const clear = 1 - soiling[month]!;
    const { fromHour, toHour } = monthSpan(month);
    for (let h = fromHour; h < toHour; h++) lightWm2[h]! *= clear;
  }
  return lightWm2;
}

/**
 * Mismatch and age take current at every voltage, as though the array had fewer strings: power falls by the share,
 * voltage stays.
 */
export function workingStrings(input: ArrayYearInput): number {
  return input.strings * (1 - (input.mismatch ?? 0)) * (1 - (input.age ?? 0));
}

/** Series resistance of one module with its share of the cable, so that voltages count at the controller, ohm. */
export function seriesOhmWithCable(input: ArrayYearInput): number {
  return input.parameters.seriesOhm + (input.cableOhm * workingStrings(input)) / input.inSeries;
}
