import { expect, test } from 'vitest';
import { beginBulk, beginDay, createCharging, holdVoltage, hoursToStageEnd, stages } from './charging.js';

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

test('a day or an engine run begins with a bulk charge; a day counts', () => {
  const floating = () => ({
    ...createCharging(),
    stage: stages.float,
    heldH: 2,
    daysSinceFull: 3,
    daysSinceEqualised: 8,
  });
  const run = floating();
  beginBulk(run);
  expect(run).toEqual({ ...floating(), stage: stages.absorption, heldH: 0 });
  const day = floating();
  beginDay(day);
  expect(day).toMatchObject({ stage: stages.absorption, heldH: 0, daysSinceFull: 4, daysSinceEqualised: 9 });
});

test('absorption ends at its tail current, not above it, and is held by the clock from the first moment on', () => {
  const at = (amps: number) => {
    const charge = createCharging();
    holdVoltage(charge, rules, 0.1, amps, 20);
    return charge;
  };
  expect(at(10.1)).toMatchObject({ stage: stages.absorption, heldH: 0.1 });
  expect(at(10)).toMatchObject({ stage: stages.float, heldH: 0 });
  const charge = at(50);
  holdVoltage(charge, rules, 1, 50, 20);
  expect(charge.heldH).toBeCloseTo(1.1, 12);
});

test('a bank is equalised when it is due, if ever, and not as warm as 35 degC', () => {
  const after = (daysSinceEqualised: number, bankC: number, equaliseEveryDays = 30) => {
    const charge = { ...createCharging(), daysSinceEqualised };
    holdVoltage(charge, { ...rules, equaliseEveryDays }, 3, 50, bankC);
    return charge.stage;
  };
  expect([29, 30, 31].map((days) => after(days, 20))).toEqual([stages.float, stages.equalise, stages.equalise]);
  expect(after(400, 20, 0)).toBe(stages.float);
  expect([34.9, 35].map((bankC) => after(30, bankC))).toEqual([stages.equalise, stages.float]);
});

test('equalising that grows too warm is put off with what it has reached, and float is left alone', () => {
  const charge = { ...createCharging(), stage: stages.equalise, daysSinceEqualised: 31 };
  holdVoltage(charge, rules, 0.5, 50, 34);
  expect(charge).toMatchObject({ stage: stages.equalise, equalisedH: 0.5 });
  holdVoltage(charge, rules, 0.5, 50, 35);
  expect(charge).toMatchObject({ stage: stages.float, equalisedH: 1, daysSinceEqualised: 31 });
  const before = { ...charge };
  holdVoltage(charge, rules, 5, 50, 20);
  expect(charge).toEqual(before);
});

test('a stage ends after what is left of it while the voltage is held, and float never', () => {
  const left = (stage: 0 | 1 | 2, held: number, atLimit = true) =>
    hoursToStageEnd({ ...createCharging(), stage, heldH: held, equalisedH: held }, rules, atLimit);
  expect(left(stages.absorption, 1)).toBe(2);
  expect(left(stages.absorption, 5)).toBe(0);
  expect(left(stages.equalise, 0.5)).toBe(1.5);
  expect(left(stages.float, 1)).toBe(Number.POSITIVE_INFINITY);
  expect(left(stages.absorption, 1, false)).toBe(Number.POSITIVE_INFINITY);
});
