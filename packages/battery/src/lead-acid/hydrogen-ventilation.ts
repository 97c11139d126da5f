import { mustBeAbove } from '@wintergap/ground';
import type { ResolvedBank } from '../bank-settings.js';

/** Air that keeps the hydrogen of a charging bank far below what can burn. */
export interface HydrogenVentilation {
  airM3PerH: number;
  /** Free area of the opening at the inlet, and of as large a one at the outlet, where the air moves by itself, cm2. */
  openingCm2: number;
}

/**
 * Currents that make gas while a full bank is charged at its boost voltage, mA per Ah of ten-hour capacity, faulty and
 * aged cells included: EN 50272-2 / IEC 62485-2, table of the ventilation clause, as seen in a public copy.
 */
export const boostGasMAPerAh = { vented: 20, valveRegulated: 8 } as const;

/** The same on float, mA per Ah of ten-hour capacity: what a full bank makes day and night, from the same table. */
export const floatGasMAPerAh = { vented: 5, valveRegulated: 1 } as const;

/** Heat carried out by a flow of air, W/K per m3/h: 1.2 kg/m3 and 1005 J/(kg K) over 3600 s. */
export const airWPerKPerM3PerH: number = (1.2 * 1005) / 3600;

/** m3 of air for each Ah that makes gas: 0.42 l of hydrogen, 24 parts of air to each for the 4 % that burn, 5 for safety. */
const airM3PerAh = 0.05;
/** Opening for each m3/h of air that moves by itself at 0.1 m/s, cm2; the formula from a public copy, 28 from memory. */
const openingCm2PerM3PerH = 28;

/**
 * Air flow by EN 50272-2 / IEC 62485-2: Q = 0.05 n I_gas C10 / 1000 m3/h; natural openings A = 28 Q cm2.
 *
 * @param cells cells in series
 * @param gasMAPerAh current that makes gas
 * @param capacityAh ten-hour capacity
 */
export function hydrogenVentilation(cells: number, gasMAPerAh: number, capacityAh: number): HydrogenVentilation {
  mustBeAbove('cells', cells, 0);
  mustBeAbove('gasMAPerAh', gasMAPerAh, 0);
  mustBeAbove('capacityAh', capacityAh, 0);
  const airM3PerH = (airM3PerAh * cells * gasMAPerAh * capacityAh) / 1000;
  return { airM3PerH, openingCm2: openingCm2PerM3PerH * airM3PerH };
}

/** The same for a bank, charged at its boost voltage; `null` for cells that make no hydrogen in use. */
export function ventilationOfBank(
  { cells, defaults }: ResolvedBank,
  tenHourCapacityAh: number,
): HydrogenVentilation | null {
  const { gas } = defaults.traits;
  if (gas === 'none') return null;
  const gasMAPerAh = gas === 'vented' ? boostGasMAPerAh.vented : boostGasMAPerAh.valveRegulated;
  return hydrogenVentilation(cells, gasMAPerAh, tenHourCapacityAh);
}
