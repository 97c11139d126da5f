import { mustLie } from '@wintergap/ground';
import { fuelProperties } from './fuels.js';
import type { GeneratorSettings } from './settings.js';

/** What running the engine took. Costs are in the money of the prices given; 0 where no price was given. */
export interface EngineUse {
  hours: number;
  starts: number;
  litres: number;
  fuelKg: number;
  co2Kg: number;
  fuelCost: number;
  /** Changes that the hours amount to, not rounded: half an interval is half a change. */
  oilChanges: number;
  oilCost: number;
  overhauls: number;
  overhaulCost: number;
  cost: number;
  /** Mean length of a run, h; `null` when there was none. */
  meanRunH: number | null;
}

/**
 * Fuel, upkeep, cost and carbon dioxide of a spell of running.
 *
 * @param hours engine hours, warm-up and cool-down included
 * @param starts successful starts
 * @param litres fuel burned
 */
export function engineUse(hours: number, starts: number, litres: number, settings: GeneratorSettings): EngineUse {
  mustLie('hours', hours, 0, Number.MAX_VALUE);
  mustLie('starts', starts, 0, Number.MAX_VALUE);
  mustLie('litres', litres, 0, Number.MAX_VALUE);
  const { fuel, oil, overhaul } = settings;
  if (oil) mustLie('oil.everyH', oil.everyH, 1, 1e6);
  if (overhaul) mustLie('overhaul.everyH', overhaul.everyH, 1, 1e6);
  const properties = fuelProperties[fuel.kind];
  const fuelCost = litres * (fuel.pricePerL ?? 0);
  const oilChanges = oil ? hours / oil.everyH : 0;
  const overhauls = overhaul ? hours / overhaul.everyH : 0;
  const oilCost = oilChanges * (oil?.cost ?? 0);
  const overhaulCost = overhauls * (overhaul?.cost ?? 0);
  return {
    hours,
    starts,
    litres,
    fuelKg: litres * properties.densityKgPerL,
    co2Kg: litres * properties.co2KgPerL,
    fuelCost,
    oilChanges,
    oilCost,
    overhauls,
    overhaulCost,
    cost: fuelCost + oilCost + overhaulCost,
    meanRunH: starts > 0 ? hours / starts : null,
  };
}
