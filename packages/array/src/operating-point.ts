import { diodeCurrent, diodeOpenCircuit, diodePeak } from './single-diode.js';
import { type ModuleParameters, translateCurve } from './translation.js';

// One thread runs one call at a time: the translated curve is handed over here instead of in a new object.
const curve = new Float64Array(4);

/** Less than starlight; under it the curve's currents drown in rounding, so the module counts as dark, W/m2. */
const darkWm2 = 1e-6;

/**
 * Maximum power of one module into `out` as [W, V, A]; zeros without light.
 *
 * @param effectiveWm2 irradiance that reaches the cells, 0 or more
 * @param cellC cell temperature, degC
 */
export function maximumPower(p: ModuleParameters, effectiveWm2: number, cellC: number, out: Float64Array): void {
  maximumPowerThrough(p, p.seriesOhm, effectiveWm2, cellC, out);
}

/** As `maximumPower`, with another series resistance: the module's own and its share of the cable. */
export function maximumPowerThrough(
  p: ModuleParameters,
  seriesOhm: number,
  effectiveWm2: number,
  cellC: number,
  out: Float64Array,
): void {
  if (effectiveWm2 < darkWm2) {
    out[0] = 0;
    out[1] = 0;
    out[2] = 0;
    return;
  }
  translateCurve(p, effectiveWm2, cellC, curve);
  diodePeak(curve[0]!, curve[1]!, curve[2]!, seriesOhm, curve[3]!, out);
}

/** Current of one module at a terminal voltage, A. Negative above open circuit: a blocking diode is the caller's. */
export function currentAt(p: ModuleParameters, effectiveWm2: number, cellC: number, voltageV: number): number {
  translateCurve(p, Math.max(0, effectiveWm2), cellC, curve);
  return diodeCurrent(curve[0]!, curve[1]!, curve[2]!, p.seriesOhm, curve[3]!, voltageV);
}

/** Open-circuit voltage of one module, V; 0 without light. */
export function openCircuitVoltage(p: ModuleParameters, effectiveWm2: number, cellC: number): number {
  if (effectiveWm2 < darkWm2) return 0;
  translateCurve(p, effectiveWm2, cellC, curve);
  return diodeOpenCircuit(curve[0]!, curve[1]!, curve[2]!, curve[3]!);
}
