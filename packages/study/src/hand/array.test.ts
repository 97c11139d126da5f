import { expect, test } from 'vitest';
import { handArray } from './array.js';

const string = { connection: 'direct', operatingA: 8 } as const;
const question = { ratio: 1, losses: 0.1, string };
const january = { dailyLoadAh: 90, sunHours: 2.5 };

// 8 A x 2.5 h x 0.9 = 18 Ah a string: 90 Ah are five strings and not a sixth for the rounding of a division.
test('a load that whole strings just meet buys none on top', () => {
  expect(handArray({ ...question, months: [january] })).toMatchObject({ strings: 5, ratioReached: 1 });
  // 90.1 / 18 is more than five.
  expect(handArray({ ...question, months: [{ ...january, dailyLoadAh: 90.1 }] })).toMatchObject({ strings: 6 });
});

test('the month with the most load for its sun decides wherever it stands, the first of two alike', () => {
  const months = (...loads: number[]) => loads.map((dailyLoadAh) => ({ dailyLoadAh, sunHours: 2 }));
  const decides = (...loads: number[]) => handArray({ ...question, months: months(...loads) })!.month;
  expect([decides(90, 60, 30), decides(60, 90, 30), decides(30, 60, 90)]).toEqual([0, 1, 2]);
  expect(decides(60, 90, 90)).toBe(1);
  // Loads of less than one ampere-hour for an hour of sun are loads too.
  expect(decides(0.5, 1.5)).toBe(1);
});

test('a place that is closed in the dark months needs no sun in them', () => {
  const closed = { dailyLoadAh: 0, sunHours: 0 };
  expect(handArray({ ...question, months: [closed, january] })).toMatchObject({ month: 1, strings: 5 });
});

test('without any load no string is wanted, and what is there is endlessly enough', () => {
  const months = [
    { dailyLoadAh: 0, sunHours: 0 },
    { dailyLoadAh: 0, sunHours: 2 },
  ];
  const { month, exactStrings, strings, ratioReached } = handArray({ ...question, months })!;
  expect([month, exactStrings, ratioReached]).toEqual([0, 0, Infinity]);
  expect(strings).toBeCloseTo(0);
});

test('losses may be none, but not all', () => {
  const months = [january];
  // Nothing lost: 90 / (8 x 2.5) = 4.5 strings.
  expect(handArray({ ...question, months, losses: 0 })).toMatchObject({ exactStrings: 4.5, strings: 5 });
  expect(() => handArray({ ...question, months, losses: 1 })).toThrow('losses must be 0 to below 1, got 1');
  expect(() => handArray({ ...question, months, losses: -0.1 })).toThrow('losses must be 0 to below 1, got -0.1');
});

test('what no array can be reckoned from is refused by its name', () => {
  const months = [january];
  const refused = (of: object) => () => handArray({ ...question, months, ...of });
  expect(refused({ months: [] })).toThrow('months must hold at least one month');
  expect(refused({ ratio: 0 })).toThrow('ratio must be above 0');
  expect(refused({ months: [january, { dailyLoadAh: -1, sunHours: 2 }] })).toThrow('months[1].dailyLoadAh');
  expect(refused({ months: [{ dailyLoadAh: 1, sunHours: 25 }] })).toThrow('months[0].sunHours must be 0 to 24');
  expect(refused({ string: { connection: 'direct', operatingA: 0 } })).toThrow('operatingA');
  expect(refused({ string: { connection: 'maximum-power', powerW: 0, busV: 24 } })).toThrow('powerW');
  expect(refused({ string: { connection: 'maximum-power', powerW: 600, busV: 0 } })).toThrow('busV');
});
