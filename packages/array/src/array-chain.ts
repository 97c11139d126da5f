import { hoursPerYear, monthSpan } from '@wintergap/ground';
import type { DcYear } from './dc-year.js';
import { maximumPower } from './operating-point.js';
import { referenceWm2 } from './translation.js';
import { type ArrayYearInput, dirtyLight } from './wiring.js';

/** Where the energy goes between the sky and the bus: start = all losses + rest, month by month, to rounding. */
export interface ArrayChain {
  ratedKW: number;
  /** Rated power x plane insolation, as though the array stood at 25 degC in clear view behind no glass, kWh. */
  startKWh: Float64Array;
  /** In the order in which they bite. A negative loss is a gain: cold cells give more than rated. */
  losses: ChainLoss[];
  /** What is left after the last loss, kWh. */
  restKWh: Float64Array;
}

export interface ChainLoss {
  name: string;
  /** January first, kWh. */
  kWh: Float64Array;
}

/** Hourly plane-of-array irradiance and its losses; plane - skyline - glass = the array's effective irradiance. */
export interface PlaneLight {
  /** In clear view of the sky. */
  planeWm2: Float64Array;
  skylineLossWm2: Float64Array;
  glassLossWm2: Float64Array;
}

/**
 * The chain from the plane of the array to the controller: skyline, glass, soiling, snow, low light, temperature,
 * mismatch, age, cable. Low light is the curve's loss at 25 degC (and the rounding of the stated power);
 * temperature is what the cells' real warmth changes on top. `extendChain` goes on to the bus.
 */
export function arrayChain(input: ArrayYearInput, dc: DcYear, light: PlaneLight): ArrayChain {
  const { parameters, inSeries, strings, effectiveWm2, cellC } = input;
  const { planeWm2, skylineLossWm2, glassLossWm2 } = light;
  for (const series of [effectiveWm2, planeWm2, skylineLossWm2, glassLossWm2]) {
    if (series.length !== hoursPerYear)
      throw new RangeError(`the chain needs ${hoursPerYear} hours, got ${series.length}`);
  }
  for (let h = 0; h < hoursPerYear; h++) {
    const gap = planeWm2[h]! - skylineLossWm2[h]! - glassLossWm2[h]! - effectiveWm2[h]!;
    if (!(Math.abs(gap) <= 1e-6 * (1 + planeWm2[h]!))) {
      throw new RangeError(`plane - skyline - glass must give effectiveWm2, off by ${gap} W/m2 in hour ${h}`);
    }
  }
  const modules = inSeries * strings;
  const perWm2 = (parameters.ratedW * modules) / referenceWm2;
  const dirtyWm2 = dirtyLight(input);
  const thinned = 1 - (input.mismatch ?? 0);
  const aged = thinned * (1 - (input.age ?? 0));

  const names = ['skyline', 'glass', 'soiling', 'snow', 'low light', 'temperature', 'mismatch', 'age', 'cable'];
  const levelsKWh = Array.from({ length: names.length + 1 }, () => new Float64Array(12));
  const level = new Float64Array(names.length + 1);
  const point = new Float64Array(3);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour } = monthSpan(month);
    for (let h = fromHour; h < toHour; h++) {
      const lit = dc.litWm2[h]!;
      level[0] = perWm2 * planeWm2[h]!;
      level[1] = perWm2 * (planeWm2[h]! - skylineLossWm2[h]!);
      level[2] = perWm2 * effectiveWm2[h]!;
      level[3] = perWm2 * dirtyWm2[h]!;
      level[4] = perWm2 * lit;
      maximumPower(parameters, lit, 25, point);
      level[5] = point[0]! * modules;
      maximumPower(parameters, lit, cellC[h]!, point);
      level[6] = point[0]! * modules;
      level[7] = level[6]! * thinned;
      level[8] = level[6]! * aged;
      level[9] = dc.powerW[h]!;
      for (let k = 0; k < level.length; k++) levelsKWh[k]![month]! += level[k]! / 1000;
    }
  }
  return {
    ratedKW: (parameters.ratedW * modules) / 1000,
    startKWh: levelsKWh[0]!,
    losses: names.map((name, k) => ({ name, kWh: levelsKWh[k]!.map((kWh, month) => kWh - levelsKWh[k + 1]![month]!) })),
    restKWh: levelsKWh[names.length]!,
  };
}

/** The chain with one more named loss, such as conversion, clipping or throttling; hourly energies in Wh. */
export function extendChain(chain: ArrayChain, name: string, lossWh: Float64Array): ArrayChain {
  if (lossWh.length !== hoursPerYear)
    throw new RangeError(`${name} must have ${hoursPerYear} hours, got ${lossWh.length}`);
  const kWh = new Float64Array(12);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour } = monthSpan(month);
    for (let h = fromHour; h < toHour; h++) kWh[month]! += lossWh[h]! / 1000;
  }
  return {
    ...chain,
    losses: [...chain.losses, { name, kWh }],
    restKWh: chain.restKWh.map((rest, month) => rest - kWh[month]!),
  };
}
