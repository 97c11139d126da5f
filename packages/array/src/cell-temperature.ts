import { OutOfRangeError } from '@wintergap/ground';
/** How a module sheds heat: by wind (Faiman 2008), or by its nominal operating cell temperature alone. */
export type CellCooling =
  | {
      kind: 'wind';
      /** Heat loss in still air, W/m2 per K. Left out: 25.0. */
      stillWm2K?: number;
      /** Further loss per m/s of wind, W/m2 per K. Left out: 6.84. */
      perWindWm2K?: number;
    }
  | { kind: 'noct'; noctC: number };

// Faiman 2008, Prog. Photovolt. 16, 307-315: seven module types, joint fit; single types 23.5 to 26.5 and 6.25 to 7.68.
const faimanStillWm2K = 25.0;
const faimanPerWindWm2K = 6.84;

/**
 * Cell temperature, degC, by Faiman 2008: Tc = Ta + G / (u0 + u1 v). Open racks; a module close to a roof has
 * smaller u0 and u1.
 *
 * @param planeWm2 irradiance that reaches the plane past the skyline, before glass losses
 * @param windMs wind at the module's height, m/s
 */
export function windCellC(
  airC: number,
  planeWm2: number,
  windMs: number,
  stillWm2K: number = faimanStillWm2K,
  perWindWm2K: number = faimanPerWindWm2K,
): number {
  return airC + planeWm2 / (stillWm2K + perWindWm2K * windMs);
}

/** Cell temperature, degC, from the nominal operating cell temperature (IEC 61215: 800 W/m2, 20 degC, 1 m/s). */
export function noctCellC(airC: number, planeWm2: number, noctC: number): number {
  return airC + ((noctC - 20) * planeWm2) / 800;
}

/** Hourly cell temperature, degC. `windMs` is not read for a nominal operating cell temperature. */
export function cellTemperatureYear(
  cooling: CellCooling,
  airC: Float64Array,
  planeWm2: Float64Array,
  windMs: Float64Array,
): Float64Array {
  const n = airC.length;
  if (planeWm2.length !== n || windMs.length !== n) {
    throw new OutOfRangeError(
      `airC, planeWm2 and windMs must have one length, got ${n}, ${planeWm2.length}, ${windMs.length}`,
    );
  }
  const cellC = new Float64Array(n);
  if (cooling.kind === 'noct') {
    const { noctC } = cooling;
    if (!(noctC >= 30 && noctC <= 70)) throw new OutOfRangeError(`noctC must be 30 to 70, got ${noctC}`);
    for (let h = 0; h < n; h++) cellC[h] = noctCellC(airC[h]!, planeWm2[h]!, noctC);
    return cellC;
  }
  const still = cooling.stillWm2K ?? faimanStillWm2K;
  const perWind = cooling.perWindWm2K ?? faimanPerWindWm2K;
  if (!(still >= 5 && still <= 100)) throw new OutOfRangeError(`stillWm2K must be 5 to 100, got ${still}`);
  if (!(perWind >= 0 && perWind <= 20)) throw new OutOfRangeError(`perWindWm2K must be 0 to 20, got ${perWind}`);
  for (let h = 0; h < n; h++) cellC[h] = windCellC(airC[h]!, planeWm2[h]!, windMs[h]!, still, perWind);
  return cellC;
}
