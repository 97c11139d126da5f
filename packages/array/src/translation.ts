/** The solved curve of one module at 1000 W/m2 and 25 degC, and what moves it; plain numbers, fit for JSON. */
export interface ModuleParameters {
  /** Light current at reference, A. */
  lightA: number;
  /** Diode saturation current at reference, A. */
  saturationA: number;
  /** Modified ideality factor n N k T / q at reference, V. */
  idealityV: number;
  /** Series resistance, ohm. */
  seriesOhm: number;
  /** Shunt conductance at 1000 W/m2, S; the inverse of the shunt resistance, 0 when there is no shunt. */
  shuntS: number;
  /** Change of the light current, A/K. */
  lightAPerK: number;
  /** Band gap at reference, eV. */
  gapEv: number;
  /** Fall of the band gap with temperature, fraction per K. */
  gapFallPerK: number;
  /** Rated power, W: as stated, or vmpV x impA. */
  ratedW: number;
}

export const referenceWm2 = 1000;
export const referenceK = 298.15;
const zeroCelsiusK = 273.15;
/** Boltzmann constant, eV/K. */
export const boltzmannEvPerK = 8.617333e-5;

/**
 * The curve at another light and temperature, into `out` as [IL A, I0 A, a V, G S]. The series resistance stays.
 *
 * Source: De Soto, Klein & Beckman 2006, Solar Energy 80, 78-88, eqs. 8 to 13, the air-mass ratio being part of
 * the effective irradiance.
 *
 * @param effectiveWm2 irradiance that reaches the cells, after glass, dirt and snow, above 0
 * @param cellC cell temperature, degC
 */
export function translateCurve(p: ModuleParameters, effectiveWm2: number, cellC: number, out: Float64Array): void {
  const cellK = cellC + zeroCelsiusK;
  const warmth = cellK / referenceK;
  const light = effectiveWm2 / referenceWm2;
  const gapEv = p.gapEv * (1 - p.gapFallPerK * (cellK - referenceK));
  out[0] = light * (p.lightA + p.lightAPerK * (cellK - referenceK));
  out[1] =
    p.saturationA * warmth * warmth * warmth * Math.exp((p.gapEv / referenceK - gapEv / cellK) / boltzmannEvPerK);
  out[2] = p.idealityV * warmth;
  out[3] = p.shuntS * light;
}
