import { expect, test } from 'vitest';
import { heatToCharge, refusedInCold, refusedInHeat } from './refused-charge.js';
import { quietYear } from './year.fixture.js';

const lithium = { chemistry: 'lithium-iron-phosphate' as const, voltageV: 25.6, capacityAh: 400, atRateH: 5 };

/** In every hour 500 Wh are thrown away, the engine runs for a quarter of an hour, and 30 Wh stay dark. */
function busyYear(bankC: (h: number) => number, bank?: typeof lithium) {
  const year = quietYear(bank ? { bank } : {});
  const { ledger } = year;
  for (let h = 0; h < 8760; h++) ledger.bankC[h] = bankC(h);
  ledger.throttledWh.fill(500);
  ledger.generatorH.fill(0.25);
  ledger.darkWh.fill(30);
  return year;
}

// The temperature at the end of one hour is that of the next.
test('a lithium bank refuses sun and engine in the hour after it was found at 0 degC', () => {
  const { plant, ledger } = busyYear((h) => (h === 9 ? 0 : 5), lithium);
  expect(refusedInCold(plant, ledger)).toEqual({ hours: 1, sunWh: 500, engineH: 0.25, darkWh: 0 });
  ledger.throttledWh[10] = 0;
  expect(refusedInCold(plant, ledger)).toEqual({ hours: 0, sunWh: 0, engineH: 0.25, darkWh: 0 });
});

test('the last hour of the year is the one before the first', () => {
  const { plant, ledger } = busyYear((h) => (h === 8759 ? -1 : 5), lithium);
  ledger.throttledWh.fill(0);
  ledger.throttledWh[0] = 700;
  expect(refusedInCold(plant, ledger)).toMatchObject({ hours: 1, sunWh: 700 });
});

test('a bank above 95 % refuses sun because it is full', () => {
  const { plant, ledger } = busyYear((h) => (h < 4 ? 0 : 5), lithium);
  ledger.stateOfCharge.set([0.5, 0.94, 0.95, 0.96, 1]);
  expect(refusedInCold(plant, ledger)).toEqual({ hours: 2, sunWh: 1000, engineH: 1, darkWh: 0 });
});

test('what stays dark counts where the cold cuts off the discharge too, and lead-acid takes some charge in any cold', () => {
  const cold = busyYear((h) => (h < 3 ? -40 : 5), lithium);
  expect(refusedInCold(cold.plant, cold.ledger)).toMatchObject({ hours: 3, darkWh: 90 });
  const { plant, ledger } = busyYear((h) => (h < 3 ? -40 : 5));
  expect(refusedInCold(plant, ledger)).toMatchObject({ hours: 0, engineH: 0 });
});

test('chargers stop at 50 degC, which leaves the discharge as it is', () => {
  const { ledger } = busyYear((h) => [49.9, 50, 60][h] ?? 20);
  expect(refusedInHeat(ledger)).toEqual({ hours: 2, sunWh: 1000, engineH: 0.5, darkWh: 0 });
});

// By hand: the mean of the last day is -15 degC, though one hour of another is at -40; 20 K to 5 degC at 2 W/K of walls and 1 W/K of
// air take 60 W, and a room of 20 degC behind 1 W/K gives 15 of them.
test('the heater that keeps a bank chargeable is that of its coldest day, less what a heated room gives', () => {
  const airC = (h: number) => (h === 2000 ? -40 : h < 8736 ? -10 : h % 2 === 0 ? -30 : 0);
  const { plant } = quietYear({ airC });
  const cabinet = { insulationWPerK: 2, ventilationWPerK: 1, heatCapacityWhPerK: 250 };
  expect(heatToCharge({ ...plant, cabinet })).toBeCloseTo(60, 9);
  expect(heatToCharge({ ...plant, cabinet: { insulationWPerK: 2, heatCapacityWhPerK: 250 } })).toBeCloseTo(40, 9);
  const sharedRoom = { WPerK: 1, roomC: 20 };
  expect(heatToCharge({ ...plant, cabinet: { ...cabinet, sharedRoom } })).toBeCloseTo(45, 9);
  expect(heatToCharge({ ...quietYear({ airC: () => 8 }).plant, cabinet })).toBe(0);
});
