import { mustLie } from '@wintergap/ground';
import { type FuelKind, fuelProperties } from './fuels.js';

/** The engine's fuel and how much of it flows. */
export interface GeneratorFuel {
  kind: FuelKind;
  /** Consumption at the nameplate power. */
  atFullLPerH: number;
  /** Consumption running without load. */
  idleLPerH: number;
  pricePerL?: number;
}

/** Fuel flow as a straight line over the output: what an idle engine burns, and what each watt-hour adds. */
export interface FuelLine {
  fuelIdleLPerH: number;
  fuelLPerWh: number;
}

/** The straight line through idle and full power. */
export function fuelLine(fuel: GeneratorFuel, powerW: number): FuelLine {
  mustLie('powerW', powerW, 1, 1e9);
  mustLie('fuel.idleLPerH', fuel.idleLPerH, 0, 1e6);
  mustLie('fuel.atFullLPerH', fuel.atFullLPerH, fuel.idleLPerH, 1e6);
  return { fuelIdleLPerH: fuel.idleLPerH, fuelLPerWh: (fuel.atFullLPerH - fuel.idleLPerH) / powerW };
}

/**
 * Fuel flow of the running engine, L/h, by the Willans line: nearly straight from idle to full for engines whose
 * speed is held constant.
 *
 * @param powerW output of the set, W; 0 when idling
 */
export function fuelLPerH(powerW: number, line: FuelLine): number {
  return line.fuelIdleLPerH + line.fuelLPerWh * powerW;
}

/**
 * Fuel flow from efficiencies, for a set without a consumption sheet.
 *
 * @param atFull share of the lower heat that leaves as electricity at full power
 * @param atQuarter the same at a quarter of full power
 */
export function fuelFromEfficiency(
  kind: FuelKind,
  powerW: number,
  atFull: number,
  atQuarter: number = 0.57 * atFull,
): GeneratorFuel {
  mustLie('powerW', powerW, 1, 1e9);
  mustLie('efficiency at full power', atFull, 0.01, 0.6);
  // A line that passes both points and is not below zero at idle needs a quarter-load efficiency within these.
  mustLie('efficiency at quarter power', atQuarter, atFull / 4, atFull);
  const whPerL = fuelProperties[kind].lowerHeatWhPerL;
  const full = powerW / (whPerL * atFull);
  const quarter = powerW / 4 / (whPerL * atQuarter);
  return { kind, atFullLPerH: full, idleLPerH: Math.max((4 * quarter - full) / 3, 0) };
}

/**
 * Fuel flow of a usual diesel set, L/h: 0.246 per kW delivered and 0.08415 per kW of rating.
 *
 * Source, from memory: Skarstein and Uhlen 1989, Wind Engineering 13(2), 72-87; sets of some tens of kW.
 */
export function usualDieselFuel(powerW: number): GeneratorFuel {
  mustLie('powerW', powerW, 1, 1e9);
  return {
    kind: 'diesel',
    atFullLPerH: ((0.246 + 0.08415) * powerW) / 1000,
    idleLPerH: (0.08415 * powerW) / 1000,
  };
}
