import { expect, test } from 'vitest';
import { handBank } from './bank.js';

// 120 Ah a day for 5 days are 600 Ah; over 80 % deepest discharge 750 Ah, the same over 80 % at the end of life.
const question = {
  dailyLoadAh: 120,
  autonomyDays: 5,
  deepestDischarge: 0.8,
  dailyDischarge: 0.2,
  endOfLife: 0.8,
  lowestC: null,
  margin: 1,
};

// 120 Ah over 24 h are 5 A; 750 Ah at 5 A last 150 h.
test('a load that is spread over the day asks for the capacity at days of discharge', () => {
  expect(handBank(question)).toMatchObject({ capacityAh: 750, dischargeTimeH: 150, temperatureFactor: 1 });
});

test('a bank that nothing limits in a day is sized by its days alone', () => {
  // One day of 120 Ah over 0.8 is 150 Ah, where a fifth a day would have asked for 600.
  const free = handBank({ ...question, autonomyDays: 1, dailyDischarge: null });
  expect(free).toMatchObject({ forDailyDischargeAh: 0, capacityAh: 150, decidedBy: 'deepest discharge' });
});

test('what no bank can be reckoned from is refused by its name', () => {
  const refused = (of: object) => () => handBank({ ...question, ...of });
  expect(refused({ dailyDischarge: 0 })).toThrow('dailyDischarge must be above 0 and up to 1, got 0');
  expect(refused({ deepestDischarge: 1.1 })).toThrow('deepestDischarge must be above 0 and up to 1, got 1.1');
  expect(refused({ dailyLoadAh: 0 })).toThrow('dailyLoadAh must be above 0');
  expect(refused({ autonomyDays: 0 })).toThrow('autonomyDays must be above 0');
  expect(refused({ runningA: 0 })).toThrow('runningA must be above 0');
});
