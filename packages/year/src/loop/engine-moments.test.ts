import { yearSum } from '@wintergap/tally';
import { expect, test } from 'vitest';
import { northernSun, petrolSet, plantOf } from './plant.fixture.js';
import type { Plant } from './plant.js';
import { settle } from './settle.js';

/**
 * The same plant minute by minute, with the plainest arithmetic: one Euler step a minute, engine rules looked at once
 * a minute. Knows a DC set, a start and a stop by state of charge, and the absorption voltage; no float, no cabinet.
 */
function minuteByMinute(plant: Plant, startState: number, below: number, above: number) {
  const { bank, generator } = plant;
  let s = startState;
  let running = false;
  let starts = 0;
  let engineH = 0;
  for (let h = 0; h < 8760; h++) {
    const sunW = plant.sources[0]!.controller.dc.powerW[h]!;
    const demandW = plant.dcW[h]!;
    for (let minute = 0; minute < 60; minute++) {
      if (!running && s <= below) {
        running = true;
        starts++;
      } else if (running && s >= above) running = false;
      const acceptA = bank.acceptanceAmps(s, 20, 0);
      const acceptW = acceptA * bank.setVoltage(0, 20);
      const engineW = running ? Math.min(generator!.ratedW[h]!, Math.max(0, acceptW + demandW - sunW)) : 0;
      const netW = Math.min(sunW + engineW - demandW, acceptW);
      if (netW >= 0) {
        const amps = netW >= acceptW ? acceptA : bank.chargeAmps(netW, s, 20);
        s += (bank.chargeEfficiency(s, amps) * amps) / bank.refAh / 60;
      } else {
        s -= bank.dischargeAmps(-netW, s, 20) / bank.refAh / 60;
      }
      if (running) engineH += 1 / 60;
    }
    s -= bank.selfDischargePerHour(20) * s;
  }
  return { starts, engineH };
}

test.each([
  ['a small charger that runs long', 1200, 0.8],
  ['a large set that stops in the taper', 6000, 0.85],
  ['a stop before the taper', 3000, 0.65],
])('engine time agrees with a minute-by-minute run to a minute a run: %s', (_, powerW, above) => {
  const plant = plantOf({
    sunW: northernSun(900),
    dcW: (h) => (h % 24 > 15 ? 260 : 120),
    generator: { ...petrolSet, output: { bus: 'dc', powerW }, stop: [{ kind: 'charge', above }] },
  });
  // Absorption never ends and the bank stays at 20 degC, as in the plain run.
  const still: Plant = {
    ...plant,
    chargeRules: { ...plant.chargeRules, absorptionH: 1e9, tailAmps: 0 },
    cabinet: { insulationWPerK: 1e5, heatCapacityWhPerK: 1 },
  };
  const { ledger } = settle(still);
  const plain = minuteByMinute(still, ledger.stateOfCharge[8759]!, 0.45, above);
  const starts = yearSum(ledger.starts);
  expect(starts).toBeGreaterThan(15);
  expect(Math.abs(starts - plain.starts)).toBeLessThanOrEqual(1);
  // One run more or less at the turn of the year is a run's length; without that, a minute a run.
  const runH = starts === plain.starts ? 0 : plain.engineH / plain.starts;
  expect(Math.abs(yearSum(ledger.generatorH) - plain.engineH)).toBeLessThan(starts / 60 + runH);
});

test('more load never means fewer engine hours under one rule, but for the run that New Year cuts', () => {
  const hours = [60, 90, 120, 160, 210, 280].map((load) => {
    const { ledger } = settle(plantOf({ sunW: northernSun(900), dcW: () => load, generator: petrolSet }));
    return yearSum(ledger.generatorH);
  });
  const longestRun = 5;
  for (let i = 1; i < hours.length; i++) expect(hours[i]).toBeGreaterThan(hours[i - 1]! - longestRun);
  expect(hours.at(-1)).toBeGreaterThan(hours[0]! + 100);
});

test('a larger charger runs fewer hours until the bank no longer takes what it gives', () => {
  const hours = [600, 1200, 2400, 4800, 9600].map((powerW) => {
    const generator = { ...petrolSet, output: { bus: 'dc' as const, powerW } };
    const plant = plantOf({ dcW: () => 150, generator });
    // In the open, so that the heat of hard charging does not bring the bank to where chargers stop.
    const airy = { ...plant, cabinet: { insulationWPerK: 30, heatCapacityWhPerK: 250 } };
    return yearSum(settle(airy).ledger.generatorH);
  });
  for (let i = 1; i < hours.length; i++) expect(hours[i]).toBeLessThan(hours[i - 1]! + 1);
  const halvings = [hours[0]! / hours[1]!, hours[3]! / hours[4]!];
  expect(halvings[0]).toBeGreaterThan(1.8);
  expect(halvings[1]).toBeLessThan(1.3);
});

test('a stop at the end of bulk ends a run where the bank begins to refuse', () => {
  const bulk = settle(
    plantOf({
      dcW: () => 150,
      generator: { ...petrolSet, output: { bus: 'dc', powerW: 4000 }, stop: [{ kind: 'bulk-end' }] },
    }),
  ).ledger;
  const starts = yearSum(bulk.starts);
  // Nearly all of the time at full power: fuel per hour is that of full power.
  expect(yearSum(bulk.fuelL) / yearSum(bulk.generatorH)).toBeGreaterThan(0.97 * 1.6);
  expect(starts).toBeGreaterThan(20);
});
