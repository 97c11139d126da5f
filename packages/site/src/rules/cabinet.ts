import { chemistryDefaults } from '@wintergap/battery';
import type { SiteBank } from '../schema/bank.js';

/** No cell is smaller or lighter than these: generous limits for what is on sale, common practice, no source. */
const densest = {
  'lead-acid': { whPerL: 110, whPerKg: 50 },
  lithium: { whPerL: 400, whPerKg: 180 },
};
/** Below the heat capacity of any cell, Wh/(kg K): lead-acid and lithium cells have 0.25 to 0.3. */
const leastWhPerKgK = 0.2;
/** Resistance of 30 cm of the best common foam, m2K/W. */
const thickestM2KPerW = 0.3 / 0.025;

/** Two thick copper cables and their glands lose this, and no wall of a shed this much, W/K: common practice, no source. */
const cablesWPerK = 0.05;
const bareWPerK = 500;

/** What a cabinet cannot be, for the bank that stands in it: smaller, tighter or lighter than the bank itself allows. */
export function checkCabinet(bank: SiteBank, report: (path: PropertyKey[], message: string) => void): void {
  const { cabinet } = bank;
  if (!cabinet) return;
  const { whPerL, whPerKg } = densest[chemistryDefaults[bank.chemistry].traits.kind];
  const energyWh = bank.voltage * bank.capacity;
  // The surface of a cube just large enough for the cells.
  const surfaceM2 = 6 * (energyWh / whPerL / 1000) ** (2 / 3);
  const leastWPerK = surfaceM2 / thickestM2KPerW;
  const { insulation, heatCapacity } = cabinet;
  const kWh = (energyWh / 1000).toFixed(energyWh < 10_000 ? 1 : 0);
  if (typeof insulation === 'number' && !(insulation >= cablesWPerK && insulation <= bareWPerK)) {
    report(
      ['bank', 'cabinet', 'insulation'],
      `found ${insulation} W/K, expected ${cablesWPerK} W/K, what the cables of a box alone lose, to ${bareWPerK} W/K`,
    );
  } else if (typeof insulation === 'number' && insulation < leastWPerK) {
    report(
      ['bank', 'cabinet', 'insulation'],
      `found ${insulation} W/K, but 30 cm of foam all round a bank of ${kWh} kWh still lose ${leastWPerK.toFixed(2)} W/K; give { foam: 2 in, area: ${Math.ceil(2 * surfaceM2)} m2 } and the loss is worked out`,
    );
  }
  if (typeof insulation !== 'number' && insulation.area < surfaceM2) {
    report(
      ['bank', 'cabinet', 'insulation', 'area'],
      `found ${insulation.area} m2, but the cells of ${kWh} kWh alone have a surface of ${surfaceM2.toFixed(1)} m2; count all six sides of the box`,
    );
  }
  const leastWhPerK = (energyWh / whPerKg) * leastWhPerKgK;
  if (heatCapacity !== undefined && heatCapacity < leastWhPerK) {
    report(
      ['bank', 'cabinet', 'heatCapacity'],
      `found ${heatCapacity} Wh/K, but the cells of ${kWh} kWh alone hold ${leastWhPerK.toFixed(0)} Wh/K or more; leave it out and it is worked out`,
    );
  }
}
