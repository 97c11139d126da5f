import { maximumPowerThrough } from './operating-point.js';
import {
  type ArrayYearInput,
  checkArrayYearInput,
  lightOnCells,
  seriesOhmWithCable,
  workingStrings,
} from './wiring.js';

/** Hourly output of an array held at its maximum power, at the controller's end of the cable. */
export interface DcYear {
  /** Irradiance on the cells, after dirt and snow, W/m2. */
  litWm2: Float64Array;
  powerW: Float64Array;
  voltageV: Float64Array;
  currentA: Float64Array;
  /** Heat in the cable, I2R, W. */
  cableLossW: Float64Array;
}

/**
 * The array's year at maximum power. The cable is counted as series resistance of the modules, because the
 * controller seeks the maximum at its own terminals, not at the array's.
 *
 * What each loss acts on: dirt and snow dim the light, mismatch and age thin the current, the cable takes voltage.
 */
export function dcYear(input: ArrayYearInput): DcYear {
  checkArrayYearInput(input);
  const { parameters, inSeries, cableOhm, cellC } = input;
  const strings = workingStrings(input);
  const seriesOhm = seriesOhmWithCable(input);
  const litWm2 = lightOnCells(input);
  const n = litWm2.length;
  const powerW = new Float64Array(n);
  const voltageV = new Float64Array(n);
  const currentA = new Float64Array(n);
  const cableLossW = new Float64Array(n);
  const point = new Float64Array(3);
  for (let h = 0; h < n; h++) {
    if (litWm2[h]! === 0) continue;
    maximumPowerThrough(parameters, seriesOhm, litWm2[h]!, cellC[h]!, point);
    const current = point[2]! * strings;
    powerW[h] = point[0]! * inSeries * strings;
    voltageV[h] = point[1]! * inSeries;
    currentA[h] = current;
    cableLossW[h] = current * current * cableOhm;
  }
  return { litWm2, powerW, voltageV, currentA, cableLossW };
}
