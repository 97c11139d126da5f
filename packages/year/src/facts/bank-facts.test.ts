import { monthStartHour } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { type BankFacts, bankFacts, freezingOf, longestSinceFull } from './bank-facts.js';
import { exampleYear } from './example.fixture.js';
import { weatherOf } from './year.fixture.js';

/** The facts of a year whose darkest month is January. */
const factsOf = (year: ReturnType<typeof exampleYear>): BankFacts =>
  bankFacts({ ...year, summary: { darkSeason: { month: 1, months: [12, 1, 2] } } } as never);

const lithium = { chemistry: 'lithium-iron-phosphate' as const, voltageV: 25.6, capacityAh: 400, atRateH: 5 };

test('the longest time without a full charge is told with the day on which it ends', () => {
  const days = new Float64Array(8760);
  days.set([3, 4, 9, 1], 1000 * 5);
  days[8000] = 9;
  expect(longestSinceFull(days)).toEqual({ days: 9, endDay: Math.floor(5002 / 24) });
});

// A full bank of 1.28 kg/l freezes at some -65 degC, an empty one well above -17 degC (trade tables).
test('a bank is nearest to freezing where it is empty, not where it is coldest', () => {
  const { plant, ledger } = exampleYear();
  ledger.bankC.fill(-50, 100, 102);
  ledger.lowestStateOfCharge.fill(1, 100, 102);
  ledger.bankC.fill(-40, 5000, 5003);
  // A later hour that is less far below the point counts too.
  ledger.bankC[6000] = -17;
  for (const hour of [5000, 5001, 5002, 6000]) ledger.lowestStateOfCharge[hour] = 0.05;
  const { marginK, hour, hours } = freezingOf(plant.bank, ledger)!;
  expect([hour, hours]).toEqual([5000, 4]);
  expect(marginK).toBeCloseTo(-40 - plant.bank.freezingC(0.05), 9);
  expect(marginK).toBeLessThan(-23);
});

test('a bank that is never below 0 degC keeps its distance, and lithium cells do not freeze', () => {
  const { plant, ledger } = exampleYear();
  ledger.bankC[700] = 2;
  ledger.bankC[800] = 3;
  ledger.lowestStateOfCharge[800] = 0.1;
  const { marginK, hour, hours } = freezingOf(plant.bank, ledger)!;
  const [half, low] = [2 - plant.bank.freezingC(0.5), 3 - plant.bank.freezingC(0.1)];
  expect(marginK).toBeCloseTo(Math.min(half, low), 9);
  expect([hour, hours]).toEqual([low < half ? 800 : 700, 0]);
  expect(freezingOf(exampleYear({ bank: lithium }).plant.bank, ledger)).toBeNull();
});

// At the very point of freezing nothing is frozen yet.
test('an hour at the freezing point itself is none below it', () => {
  const { plant, ledger } = exampleYear();
  ledger.bankC[10] = plant.bank.freezingC(0.5);
  expect(freezingOf(plant.bank, ledger)).toEqual({ marginK: 0, hour: 10, hours: 0 });
});

test('the coldest hour of the bank has the lowest air of its day, of no other', () => {
  const airC = new Float64Array(8760).fill(10);
  airC.set([-30], 99 * 24 + 23);
  airC.set([-12], 100 * 24);
  airC.set([-11], 100 * 24 + 23);
  airC.set([-40], 101 * 24);
  const year = exampleYear({ dcW: () => 100 }, weatherOf({ airC }));
  year.ledger.bankC[100 * 24 + 7] = -5;
  year.ledger.bankC[200 * 24] = -5;
  const { coldest } = factsOf(year);
  expect(coldest).toMatchObject({ hour: 2407, bankC: -5, outdoorLowestC: -12 });
});

// Lead-acid cells give half a percent less for each kelvin (Copetti et al.): at -25 degC a quarter of the 900 to 1000 Ah that 1500 W
// get out of them at 25 degC, at 23 to 24 V.
test('what cold makes unreachable is a quarter of the bank at 50 K below its label', () => {
  const year = exampleYear({ dcW: () => 1500 });
  year.ledger.bankC[50] = -25;
  const { unreachableWh } = factsOf(year).coldest;
  expect(unreachableWh).toBeGreaterThan(0.25 * 900 * 23);
  expect(unreachableWh).toBeLessThan(0.25 * 1000 * 24);
  const warm = exampleYear({ dcW: () => 1500 });
  warm.ledger.bankC.fill(25);
  expect(factsOf(warm).coldest.unreachableWh).toBe(0);
});

// 1 Ah that makes gas takes 0.336 g of water from each of 12 cells (Faraday): 100 Ah take 0.403 L.
test('gassing takes water', () => {
  const year = exampleYear();
  year.ledger.gassingAh.set([60, 40], 700);
  expect(factsOf(year).waterL).toBeCloseTo(0.403, 3);
});

// 1000 Ah at some 25 V, of which 70 % are above the floor: 17 kWh and more at so low a load, 100 W of it a week.
test('autonomy counts from full and from the mean charge of the darkest month', () => {
  const year = exampleYear({ dcW: () => 100 });
  const toJanuary = monthStartHour[1]!;
  year.ledger.stateOfCharge.fill(0.65, 0, toJanuary);
  const { autonomy } = factsOf(year);
  expect(autonomy.typicalState).toBeCloseTo(0.65, 9);
  expect(autonomy.fromFull).toBeGreaterThan(6.5);
  expect(autonomy.fromFull).toBeLessThan(7.7);
  expect(autonomy.fromTypical / autonomy.fromFull).toBeCloseTo(0.5, 1);
});

// Load of 24 x 100 Wh a day, AC and DC; the sun gives it in each but some days.
function dullYear(dull: (day: number) => boolean) {
  const year = exampleYear({ acW: () => 60, dcW: () => 40 });
  for (let day = 0; day < 365; day++) year.ledger.arrayAvailableWh[day * 24 + 12] = dull(day) ? 2399 : 2400;
  return factsOf(year).dullRun;
}

test('the longest dull run is the longest row of days whose sun does not carry their load', () => {
  expect(dullYear(() => false)).toEqual({ firstDay: 0, days: 0 });
  expect(dullYear((day) => (day >= 40 && day < 43) || (day >= 300 && day < 305))).toEqual({ firstDay: 300, days: 5 });
  expect(dullYear((day) => day === 40 || day === 42 || day === 43 || (day > 99 && day < 102))).toEqual({
    firstDay: 42,
    days: 2,
  });
});

test('a dull run may go over New Year, and a year without sun is one', () => {
  expect(dullYear((day) => day < 3 || day > 360)).toEqual({ firstDay: 361, days: 7 });
  expect(dullYear(() => true).days).toBe(365);
});

test('wear is that of the charges and temperatures of the year', () => {
  const year = exampleYear();
  for (let day = 0; day < 365; day++) year.ledger.stateOfCharge[day * 24 + 12] = 0.4;
  const { wear } = factsOf(year);
  // A tenth of the bank each day; 12 years of calendar life at 25 degC last 2^0.5 times as long at 20.
  expect(wear.equivalentFullCycles).toBeCloseTo(36.5, 6);
  expect(wear.calendarLifeUsed).toBeCloseTo(1 / (12 * Math.SQRT2), 3);
});
