import { handArray, handBank, handMethod, temperatureFactor } from '@wintergap/study';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// IEEE 485, Table 1, cell size correction for temperature; from memory.
test.each<[tempF: number, printed: number]>([
  [25, 1.52],
  [40, 1.3],
  [50, 1.19],
  [60, 1.11],
  [77, 1],
  [90, 0.94],
  [120, 0.86],
])('at %d degF a lead-acid bank must be %d times as large', (tempF, printed) => {
  const table: Source = { from: 'IEEE 485, table 1', sure: 'from memory' };
  holds(table, `cell size factor at ${tempF} degF`, temperatureFactor((tempF - 32) / 1.8), printed, { within: 1e-9 });
});

// Steps of IEEE 1013, from memory, on a load of our own: 120 Ah a day for 5 days; 80 % deepest, 20 % daily, 80 % at the
// end of life; 40 degF; 10 % to spare; 8 A running. By hand: 600; 750, 600, 750; x 1.30 = 975; x 1.1 = 1072.5; / 8 = 134.
const worked = {
  dailyLoadAh: 120,
  autonomyDays: 5,
  deepestDischarge: 0.8,
  dailyDischarge: 0.2,
  endOfLife: 0.8,
  lowestC: (40 - 32) / 1.8,
  margin: 1.1,
  runningA: 8,
};

test('the worked bank needs 1072.5 Ah at the 134-hour rate', () => {
  const bank = handBank(worked);
  expect(bank.unadjustedAh).toBeCloseTo(600, 9);
  expect(bank.forDeepestDischargeAh).toBeCloseTo(750, 9);
  expect(bank.forDailyDischargeAh).toBeCloseTo(600, 9);
  expect(bank.forEndOfLifeAh).toBeCloseTo(750, 9);
  expect(bank.temperatureFactor).toBeCloseTo(1.3, 9);
  const steps: Source = { from: 'IEEE 1013, steps worked by hand', sure: 'from memory' };
  holds(steps, 'bank for 120 Ah a day over 5 days, Ah', bank.capacityAh, 1072.5, { within: 1e-6 });
  holds(steps, 'its discharge time, h', bank.dischargeTimeH, 1072.5 / 8, { within: 1e-6 });
});

test('the largest of the three adjustments decides, not their product', () => {
  expect(handBank({ ...worked, deepestDischarge: 0.5 })).toMatchObject({ decidedBy: 'deepest discharge' });
  expect(handBank({ ...worked, deepestDischarge: 0.9 })).toMatchObject({ decidedBy: 'end of life' });
  const short = handBank({ ...worked, autonomyDays: 2, lowestC: null, margin: 1 });
  expect(short).toMatchObject({ decidedBy: 'daily discharge', capacityAh: 600 });
});

// Steps of IEEE 1562, from memory: ratio 1.3, December with 2.5 h of sun and 120 Ah a day, strings of 8 A, 10 % lost.
// By hand: 156 Ah / (8 A x 2.5 h x 0.9 = 18 Ah) = 8.67, so 9 strings, which reach 162 / 120 = 1.35.
test('the worked array needs nine strings in December', () => {
  const months = Array.from({ length: 12 }, (_, m) => ({ dailyLoadAh: 120, sunHours: m === 11 ? 2.5 : 4 }));
  const string = { connection: 'direct', operatingA: 8 } as const;
  const array = handArray({ months, ratio: 1.3, losses: 0.1, string })!;
  expect(array).toMatchObject({ month: 11, strings: 9 });
  expect(array.stringAh).toBeCloseTo(18, 9);
  const steps: Source = { from: 'IEEE 1562, steps worked by hand', sure: 'from memory' };
  holds(steps, 'strings for a ratio of 1.3 in December', array.exactStrings, 26 / 3, { within: 1e-9 });
  holds(steps, 'ratio that nine strings reach', array.ratioReached, 1.35, { within: 1e-9 });
});

test('the month with the most load for its sun decides, not the one with the least sun', () => {
  const months = [
    { dailyLoadAh: 50, sunHours: 2 },
    { dailyLoadAh: 130, sunHours: 4 },
  ];
  const string = { connection: 'direct', operatingA: 8 } as const;
  expect(handArray({ months, ratio: 1.2, losses: 0.1, string })).toMatchObject({ month: 1, sunHours: 4 });
});

test('a maximum-power controller brings the string to the bus voltage', () => {
  const months = [{ dailyLoadAh: 100, sunHours: 2 }];
  const question = { months, ratio: 1, losses: 0 };
  const direct = handArray({ ...question, string: { connection: 'direct', operatingA: 25 } });
  expect(handArray({ ...question, string: { connection: 'maximum-power', powerW: 600, busV: 24 } })).toEqual(direct);
});

test('a month without sun cannot be met by any array, and the bank is sized all the same', () => {
  const string = { connection: 'direct', operatingA: 8 } as const;
  const months = [{ dailyLoadAh: 120, sunHours: 0 }];
  const answer = handMethod({ bank: worked, array: { months, ratio: 1.3, losses: 0.1, string } });
  expect(answer.array).toBeNull();
  expect(answer.bank.capacityAh).toBeCloseTo(1072.5, 6);
});

test('input out of range is named', () => {
  expect(() => handBank({ ...worked, endOfLife: 0 })).toThrow('endOfLife must be above 0 and up to 1, got 0');
  expect(() => handBank({ ...worked, margin: 0.5 })).toThrow('margin must be 1 to 3, got 0.5');
  expect(() => handBank({ ...worked, lowestC: Number.NaN })).toThrow('tempC must be -60 to 80, got NaN');
});
