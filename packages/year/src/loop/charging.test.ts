import { expect, test } from 'vitest';
import { beginDay, createCharging, holdVoltage, stages } from './charging.js';

const rules = { absorptionH: 3, tailAmps: 10, equaliseEveryDays: 30, equaliseH: 2 };

test('absorption ends after its time or at the tail current, and is then full', () => {
  const byTime = createCharging();
  byTime.daysSinceFull = 9;
  holdVoltage(byTime, rules, 2.9, 50, 20);
  expect(byTime.stage).toBe(stages.absorption);
  holdVoltage(byTime, rules, 0.1, 50, 20);
  expect([byTime.stage, byTime.daysSinceFull]).toEqual([stages.float, 0]);
  const byCurrent = createCharging();
  holdVoltage(byCurrent, rules, 0.1, 9, 20);
  expect(byCurrent.stage).toBe(stages.float);
});

test('equalising adds up over short days, and then rests until it is due again', () => {
  const charge = createCharging();
  charge.daysSinceEqualised = 30;
  for (const day of [1, 2, 3, 4]) {
    beginDay(charge);
    holdVoltage(charge, rules, 3, 50, 20);
    expect(charge.stage, `day ${day}`).toBe(stages.equalise);
    holdVoltage(charge, rules, 0.5, 50, 20);
  }
  expect([charge.stage, charge.daysSinceEqualised]).toEqual([stages.float, 0]);
  beginDay(charge);
  holdVoltage(charge, rules, 3, 50, 20);
  expect(charge.stage).toBe(stages.float);
});

test('a warm bank is not equalised', () => {
  const charge = createCharging();
  charge.daysSinceEqualised = 99;
  holdVoltage(charge, rules, 3, 50, 36);
  expect(charge.stage).toBe(stages.float);
});
