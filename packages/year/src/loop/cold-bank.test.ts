import { createLedger, yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { createPlantState, runYear } from './balance.js';
import { northernSun, petrolSet, plantOf } from './plant.fixture.js';
import { settle } from './settle.js';

const lithium = {
  chemistry: 'lithium-iron-phosphate' as const,
  voltageV: 25.6,
  capacityAh: 400,
  atRateH: 5,
};
const inGreatCold = { bank: lithium, airC: () => -40, dcW: () => 100 };

// Its electronics cut off the discharge below -25 degC, and no lithium cell is charged below 0 degC.
test('the engine carries the load that a bank at -40 degC does not give, however full it is', () => {
  const { ledger } = settle(plantOf({ ...inGreatCold, sunW: northernSun(900), generator: petrolSet }));
  expect(yearSum(ledger.bankChargeWh)).toBe(0);
  expect(yearSum(ledger.darkWh)).toBe(0);
  expect(yearSum(ledger.dcServedWh)).toBeCloseTo(8760 * 100, 3);
  // It runs while the sun does not carry the load, and then only.
  const plant = plantOf({ sunW: northernSun(900) });
  let sunlessH = 0;
  for (let h = 0; h < 8760; h++) if (plant.sources[0]!.controller.dc.powerW[h]! < 100) sunlessH++;
  expect(yearSum(ledger.generatorH)).toBeCloseTo(sunlessH, 6);
});

test('a run for a bank that gives nothing is one run, not one every moment', () => {
  const { ledger } = settle(plantOf({ ...inGreatCold, generator: petrolSet }));
  expect(yearSum(ledger.generatorH)).toBeCloseTo(8760, 6);
  expect(yearSum(ledger.starts)).toBeLessThanOrEqual(1);
});

test('quiet hours leave dark what the bank does not give', () => {
  const generator = { ...petrolSet, accepted: { hours: [[8, 20]] as const } };
  const { ledger } = settle(plantOf({ ...inGreatCold, generator }));
  expect(yearSum(ledger.generatorH)).toBeCloseTo(365 * 12, 6);
  expect(yearSum(ledger.darkWh)).toBeCloseTo(365 * 12 * 100, 3);
});

test('the engine starts in the very moment in which a load is more than the bank can give', () => {
  // A small bank, half full and far above its starting charge, and a load that drags it below its cutoff for an hour.
  const bank = { chemistry: 'flooded-lead-acid' as const, voltageV: 24, capacityAh: 100, atRateH: 20, floor: 0.1 };
  const plant = plantOf({
    bank,
    dcW: (h) => (h === 12 ? 2900 : 5),
    generator: { ...petrolSet, start: [{ kind: 'charge' as const, below: 0.2 }] },
  });
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, 0.5), ledger);
  expect(ledger.starts[12]).toBe(1);
  expect(ledger.generatorH[12]).toBeCloseTo(1, 6);
  expect(ledger.darkWh[12]).toBe(0);
});

test('a heater that is not fed warms nothing', () => {
  const cabinet = { insulationWPerK: 1, heatCapacityWhPerK: 100 };
  const heater = { powerW: 100, keepAboveC: 5 };
  const { ledger } = settle({ ...plantOf({ ...inGreatCold, dcW: () => 0 }), cabinet, heater });
  expect(yearSum(ledger.ownUseWh)).toBe(0);
  // Its own self-discharge warms it by some thousandths.
  expect(Math.max(...ledger.bankC)).toBeLessThan(-39.9);
});

// At 2 degC a lithium bank may take two fifths of its 200 A (none at 0 degC, all from 5 degC): being held to that is not
// the end of a charge, which would bring it to float with half of it missing.
test('a bank held back by the cold goes on charging at the current that it may have', () => {
  const plant = plantOf({ bank: lithium, airC: () => 2, dcW: () => 0, sunW: () => 5000 });
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, 0.3), ledger);
  const perHour = (80 * 0.995) / 400;
  // It warms itself a little and may take more in the second hour.
  expect(ledger.stateOfCharge[1]).toBeGreaterThan(0.3 + 2 * perHour - 0.005);
});

// 400 Ah charged at their limit of 200 A: 8 cells at 3.28-3.31 V at rest and 0.25 ohm Ah / 400 Ah each stand about 0.13 V
// higher, not at the 3.55 V of absorption, which was counted as 4 % more energy, all of it heat.
test('a bank at its current limit is charged at the voltage it has, not at the one set', () => {
  const plant = plantOf({ bank: lithium, airC: () => 25, dcW: () => 0, sunW: () => 9000 });
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, 0.3), ledger);
  const cellV = ledger.bankChargeWh[0]! / 200 / 8;
  expect(cellV).toBeGreaterThan(3.28 + 0.125);
  expect(cellV).toBeLessThan(3.33 + 0.13);
  // Heat: the square of the current over the resistance, and half a percent that is not stored.
  expect(ledger.bankLossWh[0]).toBeCloseTo(8 * 200 ** 2 * (0.25 / 400) + 0.005 * 200 * 8 * 3.3, -2);
});
