import type { BankSettings } from '@wintergap/battery';
import { assertCloses, yearSum } from '@wintergap/tally';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { idealBank, northernSun, type PlantParts, petrolSet, plantOf } from './plant.fixture.js';
import { settle } from './settle.js';

const kWh = (column: Float64Array) => yearSum(column) / 1000;
const run = (parts: PlantParts) => settle(plantOf(parts)).ledger;

test('without an array the generator carries all load, and the bank only passes on', () => {
  const ledger = run({ dcW: () => 150, generator: petrolSet });
  assertCloses(ledger);
  expect(kWh(ledger.arrayUsedWh)).toBe(0);
  expect(kWh(ledger.darkWh)).toBe(0);
  expect(kWh(ledger.dcServedWh)).toBeCloseTo(0.15 * 8760, 6);
  // What the engine gives is the load, the losses, and what is left of a run that New Year cuts.
  const lost = kWh(ledger.bankLossWh) + kWh(ledger.selfDischargeWh);
  const kept = (ledger.bankStoredWh[8759]! - ledger.bankStoredAtStartWh) / 1000;
  expect(kWh(ledger.generatorToBusWh)).toBeCloseTo(0.15 * 8760 + lost + kept, 6);
  expect(yearSum(ledger.generatorH)).toBeGreaterThan((0.15 * 8760) / 3);
});

test('a lossless bank throws away exactly what the year has too much', () => {
  const sunW = northernSun(1000);
  const ledger = run({ sunW, dcW: () => 80, bank: idealBank(400_000) });
  const offered = kWh(Float64Array.from({ length: 8760 }, (_, h) => sunW(h)));
  assertCloses(ledger);
  expect(kWh(ledger.darkWh)).toBe(0);
  expect(kWh(ledger.throttledWh)).toBeCloseTo(offered - 0.08 * 8760, 6);
  expect(kWh(ledger.bankLossWh)).toBeCloseTo(0, 6);
});

test('without load the engine never runs and nothing is dark', () => {
  const ledger = run({ sunW: northernSun(1000), generator: petrolSet });
  assertCloses(ledger);
  expect(yearSum(ledger.generatorH)).toBe(0);
  expect(kWh(ledger.darkWh) + kWh(ledger.shortfallWh)).toBe(0);
});

test('without an engine the load that an empty bank cannot carry is dark, and is the shortfall', () => {
  const ledger = run({ sunW: northernSun(500), dcW: () => 120 });
  assertCloses(ledger);
  expect(kWh(ledger.darkWh)).toBeGreaterThan(10);
  expect(kWh(ledger.shortfallWh)).toBeCloseTo(kWh(ledger.darkWh), 9);
  expect(kWh(ledger.dcServedWh) + kWh(ledger.darkWh)).toBeCloseTo(0.12 * 8760, 6);
});

test('quiet hours end a run and bar a start', () => {
  const ledger = run({ dcW: () => 200, generator: { ...petrolSet, accepted: { hours: [[9, 12]] } } });
  for (let h = 0; h < 8760; h++) if (h % 24 < 9 || h % 24 >= 12) expect(ledger.generatorH[h]).toBe(0);
  expect(yearSum(ledger.generatorH)).toBeGreaterThan(100);
});

test('warm-up and cool-down are engine time without output', () => {
  const without = run({ dcW: () => 150, generator: petrolSet });
  const withIdling = run({ dcW: () => 150, generator: { ...petrolSet, warmUpMin: 6, coolDownMin: 6 } });
  const starts = yearSum(withIdling.starts);
  const extra = yearSum(withIdling.generatorH) - yearSum(without.generatorH);
  expect(extra).toBeGreaterThan(starts * 0.2 * 0.9);
  expect(kWh(withIdling.darkWh)).toBe(0);
});

test('a set that never starts leaves the load dark', () => {
  const ledger = run({
    dcW: () => 150,
    generator: { ...petrolSet, startFailure: { chance: 1, seed: 1, retryAfterH: 1 } },
  });
  expect(yearSum(ledger.generatorH)).toBe(0);
  expect(kWh(ledger.darkWh)).toBeGreaterThan(1000);
});

test('an exercise run lasts as long as it should, every time', () => {
  const ledger = run({
    sunW: northernSun(2000),
    dcW: () => 20,
    generator: { ...petrolSet, exercise: { everyDays: 30, minutes: 15 } },
  });
  expect(yearSum(ledger.starts)).toBe(12);
  expect(yearSum(ledger.generatorH)).toBeCloseTo(12 * 0.25, 4);
});

test('the bank is run to full when it has not been full for as many days as the rule says', () => {
  const rare = run({ dcW: () => 150, generator: { ...petrolSet, fullEveryDays: 14 } });
  const longest = rare.daysSinceFull.reduce((most, days) => Math.max(most, days), 0);
  expect(longest).toBeLessThan(20);
  const never = run({ dcW: () => 150, generator: petrolSet });
  expect(never.daysSinceFull[8759]).toBeGreaterThan(300);
});

test('a bank shut up in foam in the heat is not charged into a runaway', () => {
  const plant = plantOf({ sunW: () => 3000, dcW: () => 20, airC: () => 38 });
  const { ledger } = settle({ ...plant, cabinet: { insulationWPerK: 0.1, heatCapacityWhPerK: 300 } });
  // Past 50 degC chargers stop; an hour of hard charging may carry it a few degrees beyond.
  assertCloses(ledger);
  expect(ledger.bankC.reduce((most, bankC) => Math.max(most, bankC), 0)).toBeLessThan(62);
});

test('every hour closes for any sun, load, cold, engine and chemistry', () => {
  const chemistry = fc.constantFrom(
    'flooded-lead-acid' as const,
    'agm' as const,
    'gel' as const,
    'lithium-iron-phosphate' as const,
  );
  fc.assert(
    fc.property(
      chemistry,
      // Whole watts: `fc.double` is even over the exponents, so that nearly all of its numbers above 0 are next to nothing.
      fc.integer({ min: 0, max: 4000 }),
      fc.integer({ min: 0, max: 900 }),
      fc.integer({ min: -35, max: 30 }),
      fc.double({ min: 50, max: 2000, noNaN: true }),
      fc.boolean(),
      fc.boolean(),
      (kind, sun, load, meanC, capacityAh, withEngine, acSet) => {
        const plant = plantOf({
          sunW: northernSun(sun),
          acW: (h) => (h % 24 > 6 ? load : load / 4),
          dcW: (h) => load / 3 + (h % 5),
          airC: (h) => meanC - 15 * Math.cos((h / 8760) * 2 * Math.PI),
          bank: { chemistry: kind, voltageV: 24, capacityAh, atRateH: 20 } as BankSettings,
          inverterIdleW: 15,
          maxCurrentA: 60,
          ...(withEngine && {
            generator: acSet
              ? { ...petrolSet, output: { bus: 'ac', powerW: 2500, charger: { powerW: 1200, efficiency: 0.88 } } }
              : petrolSet,
          }),
        });
        const { ledger } = settle(plant);
        assertCloses(ledger);
        const worst = { load: 0, offer: 0, gain: 0, state: 0 };
        for (let h = 0; h < 8760; h++) {
          const asked = plant.acW[h]! + plant.dcW[h]!;
          const answered = ledger.acServedWh[h]! + ledger.dcServedWh[h]! + ledger.darkWh[h]!;
          worst.load = Math.max(worst.load, Math.abs(asked - answered) / (1 + asked));
          const offered = ledger.arrayUsedWh[h]! + ledger.throttledWh[h]!;
          worst.offer = Math.max(worst.offer, Math.abs(offered - ledger.arrayAvailableWh[h]!) / (1 + offered));
          const through = ledger.bankChargeWh[h]! + ledger.bankDischargeWh[h]!;
          worst.gain = Math.max(worst.gain, -ledger.bankLossWh[h]! / (1 + through));
          worst.state = Math.max(worst.state, -ledger.stateOfCharge[h]!, ledger.stateOfCharge[h]! - 1);
        }
        expect(worst.load).toBeLessThan(1e-6);
        expect(worst.offer).toBeLessThan(1e-9);
        // A bank never gives more than it took: what it loses is not below zero, but for the solution's own error.
        expect(worst.gain).toBeLessThan(1e-3);
        expect(worst.state).toBeLessThanOrEqual(0);
      },
    ),
    { numRuns: 8 },
  );
});
