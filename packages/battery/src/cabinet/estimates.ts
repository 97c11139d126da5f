import { OutOfRangeError } from '@wintergap/ground';
import { type Chemistry, chemistryDefaults } from '../chemistry-defaults.js';

/** Films of air inside and outside a wall, m2K/W together: 0.13 + 0.04, ISO 6946. */
const airFilmsM2KPerW = 0.17;

/** Conductivity of extruded polystyrene, W/(m K); handbook 0.030-0.034. */
export const extrudedPolystyreneWPerMK = 0.032;

export interface FoamBox {
  /** Outer and inner area averaged, all sides, m2. */
  areaM2: number;
  thicknessM: number;
  /** W/(m K); extruded polystyrene if not given. */
  conductivity?: number | undefined;
}

/**
 * Conductance of an insulated box, W/K: area / (air films + thickness / conductivity). Call it again with two inches
 * (0.0508 m) more to see what they save. Joints, cables and vents come on top.
 */
export function insulationFrom({ areaM2, thicknessM, conductivity = extrudedPolystyreneWPerMK }: FoamBox): number {
  if (!(areaM2 > 0 && areaM2 < 1e4)) throw new OutOfRangeError(`areaM2 must be above 0 and under 10000, got ${areaM2}`);
  if (!(thicknessM >= 0 && thicknessM < 10)) throw new OutOfRangeError(`thicknessM must be 0 to 10, got ${thicknessM}`);
  if (!(conductivity > 0 && conductivity < 500)) {
    throw new OutOfRangeError(`conductivity must be above 0 and under 500 W/(m K), got ${conductivity}`);
  }
  return areaM2 / (airFilmsM2KPerW + thicknessM / conductivity);
}

/** Mass of a bank, kg, by its chemistry's usual Wh/kg. */
export function bankMassKg(chemistry: Chemistry, energyWh: number): number {
  return energyWh / chemistryDefaults[chemistry].whPerKg;
}

/** Heat capacity of a bank, Wh/K, from its nominal energy; common practice, no source (see the defaults table). */
export function heatCapacityFrom(chemistry: Chemistry, energyWh: number): number {
  if (!(energyWh > 0 && energyWh < 1e10)) throw new OutOfRangeError(`energyWh must be above 0, got ${energyWh}`);
  return bankMassKg(chemistry, energyWh) * chemistryDefaults[chemistry].specificHeatWhPerKgK;
}
