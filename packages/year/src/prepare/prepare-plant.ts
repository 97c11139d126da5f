import { hoursPerYear } from '@wintergap/ground';
import type { LoadYear } from '@wintergap/loads';
import { fromSite, type Site } from '@wintergap/site';
import type { Plant } from '../loop/plant.js';
import type { YearInputs } from '../year-inputs.js';
import { blamingWeather } from './blaming-weather.js';
import { type PreparedArray, prepareArrays } from './prepare-array.js';
import { prepareBank } from './prepare-bank.js';
import { prepareGenerator } from './prepare-generator.js';
import { prepareLoads } from './prepare-loads.js';
import { prepareOutdoors } from './prepare-outdoors.js';
import type { PreparedCache } from './prepared-cache.js';

/** All that a design's year needs before its balance. */
export interface PreparedPlant {
  plant: Plant;
  arrays: PreparedArray[];
  load: LoadYear;
}

/** Prepares a design for its balance under given weather. */
export function preparePlant(site: Site, inputs: YearInputs, prepared: PreparedCache): PreparedPlant {
  const { weather } = inputs;
  const outdoors = prepareOutdoors(site, weather, prepared);
  const { bank, cabinet, aroundC, heater, chargeRules } = fromSite(site, 'bank', () =>
    prepareBank(site, weather.airC, prepared),
  );
  const bankV = [bank.settings.cells * bank.settings.cutoffCellV * 0.9, bank.setVoltage(2, -20) * 1.02] as const;
  const arrays = blamingWeather(weather, () => prepareArrays(site, weather, outdoors, bankV, prepared));
  const { load, inverter, inverterInputW, converterInputW } = prepareLoads(site, inputs, outdoors, prepared);
  const plant: Plant = {
    sources: arrays.map(({ name, controller, maxCurrentA }) => ({ name, controller, maxCurrentA })),
    acW: load.acW,
    dcW: load.dcW,
    inverterInputW,
    converterInputW,
    ownUseW: ownUseOf(arrays),
    inverter,
    inverterLimitW: inverter?.powerW ?? 0,
    chargeRules,
    bank,
    cabinet,
    heater,
    aroundC,
    generator: fromSite(site, 'generator', () => prepareGenerator(site, weather, prepared)),
  };
  return { plant, arrays, load };
}

function ownUseOf(arrays: readonly PreparedArray[]): Float64Array {
  const ownUseW = new Float64Array(hoursPerYear);
  for (const array of arrays) for (let h = 0; h < hoursPerYear; h++) ownUseW[h]! += array.ownUseW[h]!;
  return ownUseW;
}
