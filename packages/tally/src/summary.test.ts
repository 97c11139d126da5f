import { expect, test } from 'vitest';
import { contractOf } from './contract.js';
import { engineTimes } from './engine-times.js';
import { createLedger, type Ledger } from './ledger.js';
import { summarise, type YearFacts } from './summary.js';

/** The last hour of January, the first of February, the last of the year. */
const [endOfJanuary, startOfFebruary, endOfYear] = [743, 744, 8759];

/**
 * A year of four eventful hours, each closed by hand (in = out + lost + stored), Wh:
 * - hour 0: sun 800 = AC 400 + DC 300 + inverter 50 + bank loss 10 + stored 40
 * - hour 743: 0 = DC 100 + bank loss 10 + stored -110
 * - hour 744: engine 2000 = AC 1000 + charger 200 + bank loss 100 + stored 700
 * - hour 8759: engine 1000 = AC 1000, and 500 more stay dark
 */
function fourHours(): Ledger {
  const ledger = createLedger();
  const post = (h: number, of: Partial<Record<keyof Ledger, number>>) => {
    for (const [name, value] of Object.entries(of)) (ledger[name as keyof Ledger] as Float64Array)[h] = value;
  };
  post(0, { arrayAvailableWh: 1000, arrayUsedWh: 800, throttledWh: 200, clippedWh: 30 });
  post(0, { acServedWh: 400, dcServedWh: 300, inverterLossWh: 50, bankLossWh: 10, bankChargeWh: 50 });
  post(endOfJanuary, { dcServedWh: 100, bankLossWh: 10, bankDischargeWh: 100 });
  post(startOfFebruary, { generatorWh: 2000, generatorToBusWh: 1800, generatorH: 0.5, starts: 1, fuelL: 0.9 });
  post(startOfFebruary, {
    acServedWh: 1000,
    chargerLossWh: 200,
    bankLossWh: 100,
    bankChargeWh: 800,
    shortfallWh: 1000,
  });
  post(endOfYear, { generatorWh: 1000, generatorToBusWh: 1000, generatorH: 0.25, starts: 2, fuelL: 0.6 });
  post(endOfYear, { acServedWh: 1000, darkWh: 500, darkH: 0.5, shortfallWh: 1500 });
  ledger.bankStoredAtStartWh = 5000;
  ledger.bankStoredWh.fill(5040, 0, endOfJanuary);
  ledger.bankStoredWh.fill(4930, endOfJanuary, startOfFebruary);
  ledger.bankStoredWh.fill(5630, startOfFebruary);
  // Half the year at 0.9, the other half at 0.7, and two days in it at 0.45.
  ledger.stateOfCharge.fill(0.9, 0, 4380);
  ledger.stateOfCharge.fill(0.7, 4380);
  ledger.stateOfCharge.fill(0.45, 5000, 5048);
  ledger.lowestStateOfCharge.fill(0.6);
  ledger.lowestStateOfCharge[5020] = 0.41;
  ledger.bankC.fill(10);
  ledger.bankC[0] = -7;
  ledger.bankC[endOfYear] = 31;
  return ledger;
}

const facts = (): YearFacts => ({
  site: { name: 'by hand', latitude: 47, longitude: 8 },
  weather: {
    source: 'none',
    hours: 8760,
    ghiKWhPerM2: 0,
    meanAirTemp: 0,
    minAirTemp: 0,
    verdict: null,
    verdictLine: null,
    mendedHours: 0,
    snowFrom: null,
  },
  darkSeason: { month: 12, months: [11, 12, 1] },
  ratedW: 1500,
  planeWm2: new Float64Array(8760).fill(500, endOfJanuary, startOfFebruary + 1),
  acLoadWh: new Float64Array(8760).fill(2900, 0, 1),
  dcLoadWh: new Float64Array(8760).fill(400, endOfYear),
  fuelPricePerL: 2,
  bank: { usableWh: 6000, autonomyDays: 3, referenceAh: 500, fullCycles: 4.5 },
  settledAfterYears: 2,
  cautions: [{ code: 'one', text: 'one' }],
});

test('energies are kWh, of the year and of the month in which the hour lies', () => {
  const { array, shortfall, load } = summarise(fourHours(), facts());
  expect(array).toMatchObject({ ratedKW: 1.5, planeKWhPerM2: 1, availableKWh: 1, usedKWh: 0.8, throttledKWh: 0.2 });
  expect(array.clippedKWh).toBe(0.03);
  expect(array.months).toHaveLength(12);
  expect(array.months[0]).toEqual({
    planeKWhPerM2: 0.5,
    availableKWh: 1,
    usedKWh: 0.8,
    throttledKWh: 0.2,
    clippedKWh: 0.03,
  });
  expect(array.months[1]).toMatchObject({ planeKWhPerM2: 0.5, availableKWh: 0 });
  expect(array.months[2]).toMatchObject({ planeKWhPerM2: 0 });
  // 400 + 1000 + 1000 of AC, 300 + 100 of DC.
  expect(load).toEqual({ acKWh: 2.9, dcKWh: 0.4, servedKWh: 2.8, darkKWh: 0.5, darkHours: 0.5 });
  // An hour counts whole, however little it lacked; most hours lack nothing.
  expect(shortfall).toMatchObject({ kWh: 2.5, hours: 2 });
  expect(shortfall.months.map(({ hours }) => hours)).toEqual([0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
  expect(shortfall.months.map(({ kWh }) => kWh)).toEqual([0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1.5]);
});

test('the engine is summed by months; its fuel has a cost where it has a price', () => {
  const { generator } = summarise(fourHours(), facts());
  expect(generator).toMatchObject({ hours: 0.75, starts: 3, fuelLitres: 1.5, fuelCost: 3, toBusKWh: 2.8 });
  expect(generator.months).toHaveLength(12);
  expect(generator.months[0]).toEqual({ hours: 0, starts: 0, fuelLitres: 0 });
  expect(generator.months[1]).toEqual({ hours: 0.5, starts: 1, fuelLitres: 0.9 });
  expect(generator.months[11]).toEqual({ hours: 0.25, starts: 2, fuelLitres: 0.6 });
  expect(summarise(fourHours(), { ...facts(), fuelPricePerL: null }).generator.fuelCost).toBeNull();
  expect(summarise(fourHours(), { ...facts(), fuelPricePerL: 0 }).generator.fuelCost).toBe(0);
});

test('the bank: its lowest within an hour, its mean, its cold and its heat', () => {
  const { bank, throttle, ledger } = summarise(fourHours(), facts());
  expect(bank).toMatchObject({ usableKWh: 6, minStateOfCharge: 0.41, minTemp: -7, maxTemp: 31 });
  expect(bank).toMatchObject({ chargeKWh: 0.85, dischargeKWh: 0.1, fullCycles: 4.5, autonomyDays: 3 });
  // 0.9 and 0.7 by halves are 0.8; 48 hours stand 0.25 lower.
  expect(bank.meanStateOfCharge).toBeCloseTo(0.8 - (48 * 0.25) / 8760, 12);
  expect(bank.longestDaysBelowHalf).toBe(2);
  expect(throttle).toMatchObject({ kWh: 0.2, hours: 1, firstDate: '01-01', lastDate: '01-01' });
  expect(ledger).toMatchObject({ yearImbalanceKWh: 0, settledAfterYears: 2 });
});

test('what programs rely on leaves out the dark season and what a larger controller would bring', () => {
  const summary = summarise(fourHours(), facts());
  const contract = contractOf(summary);
  const { darkSeason, array, ...rest } = summary;
  expect(darkSeason.month).toBe(12);
  const { clippedKWh, ...year } = array;
  expect(clippedKWh).toBe(0.03);
  expect(contract).toEqual({
    ...rest,
    array: { ...year, months: array.months.map(({ clippedKWh: _, ...month }) => month) },
  });
  expect(contract.array.months[0]).not.toHaveProperty('clippedKWh');
});

test('engine hours by month and hour of day', () => {
  const generatorH = new Float64Array(8760);
  generatorH[endOfJanuary] = 0.5;
  generatorH[endOfJanuary - 24] = 0.25;
  generatorH[startOfFebruary] = 1;
  const times = engineTimes(generatorH);
  expect(times.map((row) => row.length)).toEqual(new Array(12).fill(24));
  expect(times[0]![23]).toBe(0.75);
  expect(times[1]![0]).toBe(1);
  expect(times.flat().reduce((sum, hours) => sum + hours)).toBe(1.75);
});
