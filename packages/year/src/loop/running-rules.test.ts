import { compileGenerator } from '@wintergap/generator';
import { createLedger, yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { createPlantState, runYear } from './balance.js';
import { createBusFlow } from './bus-flow.js';
import { createEngine, decideEngine } from './engine.js';
import { northernSun, type PlantParts, petrolSet, plantOf } from './plant.fixture.js';
import type { Plant } from './plant.js';
import { settle } from './settle.js';

const run = (parts: PlantParts) => settle(plantOf(parts)).ledger;
/** A stop long before the bank refuses anything: the set gives all it can for as long as it is loaded. */
const inBulk = [{ kind: 'charge', above: 0.62 }] as const;
/** The bank stays at 20 degC. */
const still = (plant: Plant): Plant => ({ ...plant, cabinet: { insulationWPerK: 1e5, heatCapacityWhPerK: 1 } });

test('the bank gives nothing below its floor, and all down to it', () => {
  const ledger = run({ sunW: northernSun(500), dcW: () => 120 });
  let lowestGiving = 1;
  for (let h = 1; h < 8760; h++) {
    if (ledger.bankDischargeWh[h]! > 0.01) lowestGiving = Math.min(lowestGiving, ledger.stateOfCharge[h]!);
  }
  // An hour's self-discharge, 4 % a month, is the only thing that goes on there.
  expect(lowestGiving).toBeGreaterThan(0.3 - 1e-4);
  expect(lowestGiving).toBeLessThan(0.3 + 1e-4);
});

test('the lowest charge of an hour is that of the moment in which the engine starts, not of the hour ends', () => {
  const { ledger } = settle(still(plantOf({ dcW: () => 1000, generator: petrolSet })));
  let between = 0;
  for (let h = 1; h < 8760; h++) {
    if (ledger.starts[h] === 0) continue;
    // A run that begins with the hour: self-discharge stood before it, 4 % a month.
    expect(ledger.lowestStateOfCharge[h]).toBeGreaterThan(0.45 - 1e-4);
    expect(ledger.lowestStateOfCharge[h]).toBeLessThan(0.45 + 1e-9);
    if (Math.min(ledger.stateOfCharge[h - 1]!, ledger.stateOfCharge[h]!) > 0.455) between++;
  }
  expect(between).toBeGreaterThan(100);
});

test('the chargers begin a day at midnight', () => {
  const ledger = run({ dcW: () => 150, generator: petrolSet });
  for (let h = 1; h < 8760; h++) {
    expect(ledger.daysSinceFull[h]! - ledger.daysSinceFull[h - 1]!).toBe(h % 24 === 0 ? 1 : 0);
  }
});

test('absorption ends at the state of charge whose acceptance is the tail current', () => {
  for (const tailAmps of [60, 30]) {
    // Nine days without sun and one of far more than the bank takes.
    const plant = still(plantOf({ sunW: (h) => (h % 240 < 24 ? 3000 : 0), dcW: () => 60 }));
    const { bank } = plant;
    const { ledger } = settle({ ...plant, chargeRules: { ...plant.chargeRules, absorptionH: 1e9, tailAmps } });
    let low = 0.5;
    let high = 1;
    for (let k = 0; k < 50; k++) {
      const s = (low + high) / 2;
      if (bank.acceptanceAmps(s, 20, 0) > tailAmps) low = s;
      else high = s;
    }
    // A piece of an hour near full is no longer than 8 % of what is missing, and counts by its middle.
    let ends = 0;
    for (let h = 1; h < 8760; h++) {
      if (ledger.daysSinceFull[h] !== 0 || ledger.daysSinceFull[h - 1] === 0) continue;
      expect(ledger.stateOfCharge[h - 1]).toBeLessThan(low + 0.01);
      expect(ledger.stateOfCharge[h]).toBeGreaterThan(low - 0.01);
      ends++;
    }
    expect(ends).toBeGreaterThan(20);
  }
});

test('a run ends when its charger floats, whatever later stop was set', () => {
  const hours = [0.985, 1].map((above) => {
    const ledger = run({ dcW: () => 150, generator: { ...petrolSet, stop: [{ kind: 'charge', above }] } });
    expect(ledger.stateOfCharge.reduce((most, s) => Math.max(most, s), 0)).toBeLessThan(0.985);
    expect(Math.max(...ledger.daysSinceFull)).toBeLessThan(12);
    return yearSum(ledger.generatorH);
  });
  expect(hours[1]).toBe(hours[0]);
});

test('an exercise run is due when the engine has rested for its interval less the day of the date', () => {
  const generator = compileGenerator(
    { ...petrolSet, exercise: { everyDays: 30, minutes: 15 } },
    { elevationM: 0, airC: new Float64Array(8760).fill(10) },
  );
  const due = 29 * 24 + 10;
  const starts = (restH: number, h = due) =>
    decideEngine({ ...createEngine(), restH }, generator, h, 0.9, createBusFlow(25), true, 0, false);
  expect([starts(690), starts(700), starts(720)]).toEqual([0, 1, 1]);
  expect(starts(720, due + 1)).toBe(0);
});

test('no run is shorter than the shortest that was asked for, nor longer without a reason', () => {
  const output = { bus: 'dc', powerW: 1200 } as const;
  const ledger = run({
    dcW: () => 150,
    generator: { ...petrolSet, output, stop: [{ kind: 'charge', above: 0.5 }], minimumRunH: 4 },
  });
  expect(yearSum(ledger.starts)).toBeGreaterThan(100);
  // New Year may cut one run.
  expect(yearSum(ledger.generatorH) / yearSum(ledger.starts)).toBeGreaterThan(3.97);
  expect(yearSum(ledger.generatorH) / yearSum(ledger.starts)).toBeLessThan(4.001);
});

// Where the set gives more than the bank takes from the start, the bulk charge is over at once; where absorption lasts a
// quarter of an hour, its end comes before that of the shortest run. Both then end with the shortest run; they went on to the
// next moment at which something else happened, up to half an hour.
test.each([
  ['bulk is over', { stop: [{ kind: 'bulk-end' as const }] }, 3],
  ['the chargers float', { stop: [{ kind: 'charge' as const, above: 0.99 }] }, 0.25],
])('a run whose bank refuses before its shortest time is over ends there: %s', (_, { stop }, absorptionH) => {
  const output = { bus: 'dc', powerW: 12_000 } as const;
  const start = [{ kind: 'charge' as const, below: 0.6 }];
  const plant = still(plantOf({ dcW: () => 150, generator: { ...petrolSet, output, start, stop, minimumRunH: 1 } }));
  const { ledger } = settle({ ...plant, chargeRules: { ...plant.chargeRules, absorptionH } });
  const starts = yearSum(ledger.starts);
  expect(starts).toBeGreaterThan(50);
  // New Year may cut one run.
  expect(yearSum(ledger.generatorH) / starts).toBeGreaterThan(0.98);
  expect(yearSum(ledger.generatorH) / starts).toBeLessThan(1.001);
});

// 3 kW for all but six minutes of each run, and the petrol of the straight line through 0.5 and 1.6 L/h.
test('an engine gives nothing while it warms up, and burns its idle fuel', () => {
  const ledger = run({ dcW: () => 150, generator: { ...petrolSet, stop: [...inBulk], warmUpMin: 6 } });
  const hours = yearSum(ledger.generatorH);
  const loadedH = hours - 0.1 * yearSum(ledger.starts);
  expect(yearSum(ledger.starts)).toBeGreaterThan(50);
  expect(yearSum(ledger.generatorWh) / (3000 * loadedH)).toBeCloseTo(1, 3);
  expect(yearSum(ledger.fuelL)).toBeCloseTo(0.5 * hours + 1.1 * loadedH, 0);
});

// By hand: 1000 W of AC load leave 1500 W of 2500 W for a charger that could take 2500; 80 % of them reach the bank.
test('AC load and charger share one rating, and the set burns what the charger loses', () => {
  const output = { bus: 'ac', powerW: 2500, charger: { powerW: 2000, efficiency: 0.8 } } as const;
  const { ledger } = settle(
    still(plantOf({ acW: () => 1000, generator: { ...petrolSet, output, stop: [...inBulk] } })),
  );
  const hours = yearSum(ledger.generatorH);
  expect(hours).toBeGreaterThan(1000);
  expect(yearSum(ledger.generatorWh) / hours).toBeCloseTo(2500, 3);
  expect(yearSum(ledger.generatorToBusWh) / hours).toBeCloseTo(1000 + 1200, 3);
  expect(yearSum(ledger.chargerLossWh) / hours).toBeCloseTo(300, 3);
  expect(yearSum(ledger.fuelL) / hours).toBeCloseTo(1.6, 6);
});

// Three hours at the absorption voltage end the charge and the run, whatever the load: the time is counted while engine
// and bank meet at exactly what the bank takes. Rounding decided whether they did, and runs took 4.0 to 6.5 h by chance.
test('a run that ends with the charge lasts as long as its absorption, whatever the load', () => {
  const bank = { chemistry: 'flooded-lead-acid' as const, voltageV: 24, capacityAh: 211, atRateH: 10, tailA: 0 };
  const generator = {
    ...petrolSet,
    output: { bus: 'dc' as const, powerW: 700 },
    start: [{ kind: 'charge' as const, below: 0.6 }],
    stop: [{ kind: 'charge' as const, above: 0.99 }],
  };
  const runH = Array.from({ length: 24 }, (_, k) => {
    const plant = plantOf({ bank, dcW: () => 60 + 1.37 * k, generator });
    const ledger = createLedger();
    runYear(plant, createPlantState(plant, 0.6), ledger, 8712);
    return ledger.generatorH.subarray(8712, 8730).reduce((sum, hours) => sum + hours, 0);
  });
  expect(Math.min(...runH)).toBeGreaterThan(3);
  // The bulk charge takes longer with more load; when it ends is known to a piece of an hour.
  for (let k = 1; k < runH.length; k++) expect(Math.abs(runH[k]! - runH[k - 1]!), `load ${k}`).toBeLessThan(0.25);
  expect(Math.max(...runH)).toBeLessThan(4.1);
});
