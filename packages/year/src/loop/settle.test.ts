import type { GeneratorSettings } from '@wintergap/generator';
import { createLedger, yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { createPlantState, runYear } from './balance.js';
import { idealBank, northernSun, petrolSet, plantOf } from './plant.fixture.js';
import { settle } from './settle.js';

test('a settled year ends as it began', () => {
  const { ledger, settledAfterYears } = settle(plantOf({ sunW: northernSun(900), dcW: () => 100 }));
  expect(settledAfterYears).not.toBeNull();
  expect(ledger.bankStoredWh[8759]! / ledger.bankStoredAtStartWh).toBeCloseTo(1, 5);
});

// A bank that holds more than a year's surplus gains 24 Wh a day: 8760 Wh a year, and from the full bank of autumn on it has
// nothing to gain.
test('a bank that autumn left full is settled in the first year', () => {
  const plant = plantOf({ bank: idealBank(1e6), sunW: () => 2, dcW: () => 1 });
  const { ledger, settledAfterYears } = settle(plant);
  expect(settledAfterYears).toBe(1);
  expect(ledger.bankStoredAtStartWh).toBeCloseTo(1e6, 3);
  expect(yearSum(ledger.throttledWh)).toBeCloseTo(8760, 3);
});

test('a store that drains for longer than banks do is said not to settle', () => {
  // 12 years take 12 x 8760 Wh of a million: the year never repeats.
  const { settledAfterYears } = settle(plantOf({ bank: idealBank(1e6), dcW: () => 1 }));
  expect(settledAfterYears).toBeNull();
});

// Twelve years are tried. What remains after them may be a thousandth of the bank and half a kelvin, while a year repeats itself to
// a millionth and a hundredth: 50 mW take 438 Wh of a million in a year, 500 mW 4380 Wh, 0.05 mW less than half a watt-hour.
test.each([
  [0.5, null],
  [0.05, 12],
  [0.000_05, 1],
])('a store that %d W drain settles after %s years', (loadW, years) => {
  expect(settle(plantOf({ bank: idealBank(1e6), dcW: () => loadW })).settledAfterYears).toBe(years);
});

// Gas that brings 1 Wh of heat in every hour, where it should carry some away: 8760 Wh a year in a cabinet that lets none out.
test.each([
  [1, null],
  [0.1, 12],
  [0.005, 1],
])('a full bank that warms by %d K a year settles after %s years', (kelvinAYear, years) => {
  const plant = plantOf({ bank: { ...idealBank(1000), gasEnergyWh: () => -1 } });
  const cabinet = { insulationWPerK: 0, heatCapacityWhPerK: 8760 / kelvinAYear };
  expect(settle({ ...plant, cabinet }).settledAfterYears).toBe(years);
});

// The load takes 600 Wh out of 1000 in 5833 1/3 h; the set, which gives 90 W more than the load, puts them back in 6 2/3 h: three
// of these rounds of 5840 h are two years.
test('a place whose years go in turn, two by two, is settled when the first comes again', () => {
  const loadW = 600 / (5833 + 1 / 3);
  const generator: GeneratorSettings = {
    ...petrolSet,
    output: { bus: 'dc', powerW: 90 + loadW, efficiency: 1 },
    start: [{ kind: 'charge', below: 0.3 }],
    stop: [{ kind: 'charge', above: 0.9 }],
    minimumRunH: 0,
  };
  const { settledAfterYears } = settle(plantOf({ bank: idealBank(1000), dcW: () => loadW, generator }));
  expect(settledAfterYears).toBe(2);
});

// Every attempt has its place in a row of chance. If that row went on from year to year, no year would be like another.
test('an engine that often fails to start fails in the same way every year', () => {
  const failing = { ...petrolSet, startFailure: { chance: 0.3, seed: 5, retryAfterH: 7 } };
  const { settledAfterYears } = settle(plantOf({ sunW: northernSun(400), dcW: () => 120, generator: failing }));
  expect(settledAfterYears).toBeLessThan(6);
});

// 4 % in 730 h at 25 degC: what is left is (1 - 0.04 / 730) to the power of the hours.
test('an idle bank loses its self-discharge and nothing else', () => {
  const plant = { ...plantOf({ airC: () => 25 }), cabinet: { insulationWPerK: 1e5, heatCapacityWhPerK: 1 } };
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, 0.9), ledger);
  for (const h of [0, 729, 8759]) {
    expect(ledger.stateOfCharge[h]).toBeCloseTo(0.9 * (1 - 0.04 / 730) ** (h + 1), 6);
    expect(ledger.lowestStateOfCharge[h]).toBe(ledger.stateOfCharge[h]);
  }
  const lostWh = ledger.bankStoredAtStartWh - ledger.bankStoredWh[8759]!;
  expect(yearSum(ledger.selfDischargeWh)).toBeCloseTo(lostWh, 6);
  expect(yearSum(ledger.bankLossWh)).toBeCloseTo(0, 9);
});

test('a run from a later hour leaves the hours before it empty', () => {
  const plant = plantOf({ sunW: () => 100, dcW: () => 50 });
  const ledger = createLedger();
  ledger.dcServedWh.fill(7);
  runYear(plant, createPlantState(plant, 0.9), ledger, 8000);
  expect(yearSum(ledger.dcServedWh.subarray(0, 8000))).toBe(0);
  expect(yearSum(ledger.dcServedWh)).toBeCloseTo(760 * 50, 6);
});

// By hand: 1 W/K from 5 to -20 degC take 25 W, of the heater and of the bank's own losses together.
test('a heater holds its cabinet with what the bank itself does not give', () => {
  const plant = {
    ...plantOf({ sunW: () => 200, airC: () => -20 }),
    cabinet: { insulationWPerK: 1, heatCapacityWhPerK: 250 },
    heater: { powerW: 60, keepAboveC: 5 },
  };
  const { ledger } = settle(plant);
  const { bankC, ownUseWh, bankLossWh, selfDischargeWh, gassingAh } = ledger;
  for (const h of [100, 4000, 8000]) {
    expect(bankC[h]).toBeCloseTo(5, 1);
    const ownWh = bankLossWh[h]! + selfDischargeWh[h]! - plant.bank.gasEnergyWh(gassingAh[h]!);
    expect(ownUseWh[h]! + ownWh).toBeCloseTo(25, 0);
  }
  const weak = settle({ ...plant, heater: { powerW: 10, keepAboveC: 5 } }).ledger;
  expect(weak.ownUseWh[4000]).toBeCloseTo(10, 9);
});
