import { daysPerYear, hoursPerYear, monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { handForYear } from './from-year.js';

const settings = { autonomyDays: 5, ratio: 1.3, losses: 0.1, margin: 1.1 };
const module = { vmp: 30, imp: 8 };
const array = { strings: 2, inSeries: 2, module, controller: { kind: 'direct' } };
const days = (month: number) => monthSpan(month).days;

/** What of a year the hand method looks at: 24 V, 1200 Wh a day but 2400 in December, 4 h of sun but 2 in December. */
function yearOf(of: { arrays?: object[]; loadW?: number; bankC?: number[]; traits?: object; floor?: number } = {}) {
  const { arrays = [array], loadW = 50, bankC = [], traits = { leadAcidSizing: true }, floor = 0.2 } = of;
  const december = monthSpan(11).fromHour;
  // The load in three equal parts: through the inverter, through the converter and of the devices themselves.
  const part = Float64Array.from({ length: hoursPerYear }, (_, h) => ((h < december ? 1 : 2) * loadW) / 3);
  const temperatures = new Float64Array(hoursPerYear).fill(25);
  temperatures.set(bankC);
  return {
    site: { arrays, bank: { voltage: 24, atRate: 20 } },
    plant: {
      inverterInputW: part,
      converterInputW: part,
      ownUseW: part,
      // A bank that gives ten times as many ampere-hours as it is given hours.
      bank: { traits, floor, ampereHoursIn: (hours: number) => 10 * hours },
    },
    ledger: { bankC: temperatures },
    summary: {
      darkSeason: { month: 1 },
      array: { months: Array.from({ length: 12 }, (_, m) => ({ planeKWhPerM2: (m === 11 ? 2 : 4) * days(m) })) },
    },
  } as unknown as YearResult;
}

// 1200 Wh over 24 V are 50 Ah a day in January, 100 Ah in December.
test('the bank is sized for the month in which dark days are counted, the array for the darkest on its plane', () => {
  const { bank, array: by } = handForYear(yearOf(), settings)!;
  // 50 Ah x 5 days = 250; over 0.8 = 312.5; x 1.1 = 343.75. A fifth a day asks for 250 only.
  expect(bank.unadjustedAh).toBeCloseTo(250, 9);
  expect(bank.forDailyDischargeAh).toBeCloseTo(250, 9);
  expect(bank.forEndOfLifeAh).toBeCloseTo(312.5, 9);
  expect(bank.capacityAh).toBeCloseTo(343.75, 9);
  expect(by!.month).toBe(11);
  expect(by!.dailyLoadAh).toBeCloseTo(100, 9);
  // 8 A x 2 h x 0.9 = 14.4 Ah a string; 130 / 14.4.
  expect(by!.exactStrings).toBeCloseTo(130 / 14.4, 9);
});

test('where days without sun are counted in December, the bank is sized for December', () => {
  const year = yearOf();
  year.summary.darkSeason.month = 12;
  // 100 Ah x 5 days.
  expect(handForYear(year, settings)!.bank.unadjustedAh).toBeCloseTo(500, 9);
});

test('a house that stands empty for a month is sized all the same', () => {
  const year = yearOf();
  const { fromHour, toHour } = monthSpan(6);
  year.plant.inverterInputW.fill(0, fromHour, toHour);
  expect(handForYear(year, settings)!.array!.month).toBe(11);
});

test('what is to be bought is said in watts of modules and in ampere-hours of the label', () => {
  const { ratedKW, labelAh, bank } = handForYear(yearOf(), settings)!;
  // Two modules of 240 W in a string.
  expect(ratedKW).toBeCloseTo((130 / 14.4) * 0.48, 9);
  // 343.75 Ah are wanted in 343.75 / (50 / 24) = 165 h, in which the bank gives 1650 Ah, and 200 Ah in the label's 20 h.
  expect(bank.dischargeTimeH).toBeCloseTo(165, 9);
  expect(labelAh).toBeCloseTo((343.75 * 200) / 1650, 9);
});

test('a maximum-power controller brings the string to the voltage of the bank', () => {
  const controller = { kind: 'maximum-power' };
  // 480 W over 24 V are 20 A.
  const { array: by } = handForYear(yearOf({ arrays: [{ ...array, controller }] }), settings)!;
  expect(by!.stringAh).toBeCloseTo(20 * 2 * 0.9, 9);
});

test('the coldest day makes the bank larger, not the coldest hour', () => {
  // The second day of the year: 12 h at -15 and 12 h at 5 degC are -5 degC in the mean.
  const bankC = [...new Array(24).fill(10), ...new Array(12).fill(-15), ...new Array(12).fill(5)];
  const cold = handForYear(yearOf({ bankC }), settings)!;
  expect(cold.lowestC).toBeCloseTo(-5, 9);
  // -5 degC are 23 degF: 1.52 + 2 / 5 x 0.09.
  expect(cold.bank.temperatureFactor).toBeCloseTo(1.556, 9);
  expect(handForYear(yearOf({ bankC: new Array(24).fill(-70) }), settings)!.lowestC).toBe(-70);
});

test('the last day of the year may be the coldest', () => {
  const bankC = new Array(hoursPerYear).fill(25).fill(-5, (daysPerYear - 1) * 24);
  expect(handForYear(yearOf({ bankC }), settings)!.lowestC).toBeCloseTo(-5, 9);
});

test('a bank of another kind than lead-acid is held to no usual day and to no cold', () => {
  const { bank } = handForYear(yearOf({ traits: { leadAcidSizing: false }, bankC: new Array(24).fill(-5) }), settings)!;
  expect([bank.forDailyDischargeAh, bank.temperatureFactor]).toEqual([0, 1]);
});

test('the bank may be emptied as far as its floor', () => {
  const deepest = (floor: number) => handForYear(yearOf({ floor }), settings)!.bank.forDeepestDischargeAh;
  // 250 Ah over a half, over all of it, and over no less than a twentieth.
  expect([deepest(0.5), deepest(0), deepest(0.99)].map((ah) => Math.round(ah))).toEqual([500, 250, 5000]);
});

test('strings are those of the first array that has any, and without array or load there is nothing to size', () => {
  const none = { ...array, strings: 0, module: { vmp: 30, imp: 4 } };
  expect(handForYear(yearOf({ arrays: [none, array] }), settings)!.array!.stringAh).toBeCloseTo(14.4, 9);
  expect(handForYear(yearOf({ arrays: [none] }), settings)).toBeNull();
  expect(handForYear(yearOf({ loadW: 0 }), settings)).toBeNull();
});

test('a dullest month without any sun leaves the array open, and the bank is sized all the same', () => {
  const year = yearOf();
  year.summary.array.months[11]!.planeKWhPerM2 = 0;
  expect(handForYear(year, settings)).toMatchObject({
    array: null,
    ratedKW: null,
    bank: { decidedBy: 'deepest discharge' },
  });
});
