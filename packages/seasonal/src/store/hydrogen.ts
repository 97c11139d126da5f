import { mustBeShare, OutOfRangeError } from '@wintergap/ground';
import type { StoreTechnology } from './seasonal-store.js';

// Heats of combustion of hydrogen at 25 degC, per kg: lower 120.0 MJ, higher 141.8 MJ. From memory.
/** Lower heat of hydrogen, Wh/kg. Content of a hydrogen store is counted in it. */
export const hydrogenLowerHeatWhPerKg = 33_330;

/** A chain from electricity to hydrogen and back. */
export interface HydrogenChain {
  /** Electrolysis with its auxiliaries, kWh of electricity per kg. */
  electrolysisKWhPerKg: number;
  /** Compression, kWh of electricity per kg. */
  compressionKWhPerKg: number;
  /** Electricity from a fuel cell over the lower heat of the hydrogen it uses. */
  fuelCellEfficiency: number;
  /** Lower heat stored per electricity drawn, compression included. */
  efficiencyIn: number;
  roundTrip: number;
}

/** How the gas is kept: at the electrolyser's own pressure, or compressed to 200 bar in cylinders. */
export type HydrogenKeeping = 'unpressed' | '200 bar';

/**
 * Low, typical and high chain of small hydrogen plant.
 *
 * Ranges, from memory: electrolysis 50-60 kWh/kg with auxiliaries, compression to 200 bar 2-3 kWh/kg, fuel cells
 * 40-55 % of lower heat. Typical is the middle of each range. All the worst together make 21 %, all the best 37 %
 * (35 % compressed); the 25-40 % often quoted for the round trip is a little kinder than these parts allow.
 */
export function hydrogenRange(keeping: HydrogenKeeping): Record<'low' | 'typical' | 'high', HydrogenChain> {
  if (keeping !== 'unpressed' && keeping !== '200 bar') {
    throw new OutOfRangeError(`keeping must be 'unpressed' or '200 bar', got ${keeping}`);
  }
  const pressed = keeping === '200 bar' ? 1 : 0;
  return {
    low: hydrogenChain(60, 3 * pressed, 0.4),
    typical: hydrogenChain(55, 2.5 * pressed, 0.475),
    high: hydrogenChain(50, 2 * pressed, 0.55),
  };
}

/** A chain from a plant's own figures. */
export function hydrogenChain(
  electrolysisKWhPerKg: number,
  compressionKWhPerKg: number,
  fuelCellEfficiency: number,
): HydrogenChain {
  const kWhPerKg = electrolysisKWhPerKg + compressionKWhPerKg;
  const efficiencyIn = hydrogenLowerHeatWhPerKg / 1000 / kWhPerKg;
  if (!(electrolysisKWhPerKg >= 33.33 && compressionKWhPerKg >= 0 && Number.isFinite(kWhPerKg))) {
    throw new OutOfRangeError(
      `electrolysis must take 33.33 kWh/kg or more and compression 0 or more, got ${electrolysisKWhPerKg} and ${compressionKWhPerKg}`,
    );
  }
  mustBeShare('fuelCellEfficiency', fuelCellEfficiency);
  const roundTrip = efficiencyIn * fuelCellEfficiency;
  return { electrolysisKWhPerKg, compressionKWhPerKg, fuelCellEfficiency, efficiencyIn, roundTrip };
}

/**
 * A hydrogen store of a given chain, tight (no standing loss). Minimum loads and standby are the plant's own: electrolysers
 * stop somewhere between 5 and 30 % of their rating (from memory), and one that must be kept from freezing draws heat.
 */
export function hydrogenTechnology(
  chain: HydrogenChain,
  electrolyser: { minimumLoad: number; standbyW: number },
  fuelCell: { minimumLoad: number; standbyW: number },
): StoreTechnology {
  return {
    kind: 'hydrogen',
    converterIn: { efficiency: chain.efficiencyIn, ...electrolyser },
    standingLossPerH: 0,
    converterOut: { efficiency: chain.fuelCellEfficiency, ...fuelCell },
  };
}

/** Mass of hydrogen whose lower heat is `storedWh`, kg. */
export function hydrogenKg(storedWh: number): number {
  return storedWh / hydrogenLowerHeatWhPerKg;
}

/** To be shown wherever a hydrogen store is. Flammability limits in air from memory. */
export const hydrogenCaution: string =
  'Hydrogen burns in air at 4 to 75 % by volume, with a flame that is hardly seen, and leaks upward through small ' +
  'gaps. Its making, keeping and use need a design by licensed people under the local gas, pressure-vessel, ' +
  'electrical and fire codes.';
