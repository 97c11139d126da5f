import { createLedger, yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { createPlantState, runYear } from './balance.js';
import { plantOf } from './plant.fixture.js';

// Splitting water takes 285.83 kJ/mol (CRC Handbook) by two electrons, F = 96 485 C/mol: 1.4812 Wh of every Ah and cell leave with
// the gas. In a cabinet that lets no heat out, the rest of the bank's losses is all in its warmth.
test('gas carries its heat out of the cabinet, every other loss stays in it', () => {
  const heatCapacityWhPerK = 1e5;
  const plant = {
    ...plantOf({ sunW: () => 600 }),
    cabinet: { insulationWPerK: 0, heatCapacityWhPerK },
  };
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, 0.9), ledger);
  const lostWh = yearSum(ledger.bankLossWh) + yearSum(ledger.selfDischargeWh);
  const gasWh = (yearSum(ledger.gassingAh) * 12 * 285_830) / (2 * 96_485);
  expect(gasWh).toBeGreaterThan(0.2 * lostWh);
  const warmthWh = (ledger.bankC[8759]! - 20) * heatCapacityWhPerK;
  expect(warmthWh / (lostWh - gasWh)).toBeCloseTo(1, 3);
});
