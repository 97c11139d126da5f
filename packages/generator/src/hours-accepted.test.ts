import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exerciseMask } from './exercise.js';
import { acceptedMask } from './hours-accepted.js';

const count = (mask: Uint8Array) => mask.reduce((sum, value) => sum + value, 0);

test('without limits every hour is accepted', () => {
  expect(count(acceptedMask({}, 1))).toBe(8760);
});

test('hours past midnight wrap, also from December into January', () => {
  const mask = acceptedMask({ hours: [[22, 3]], months: [12] }, 1);
  expect(count(mask)).toBe(31 * 5);
  expect(mask[8759]).toBe(1);
  expect([mask[0], mask[2], mask[3]]).toEqual([1, 1, 0]);
  expect(mask[334 * 24]).toBe(0);
  expect(mask[334 * 24 + 22]).toBe(1);
});

test('a night belongs to the weekday on which it begins', () => {
  // 1 January is a Saturday: night from Saturday to Sunday, but not from Sunday to Monday.
  const mask = acceptedMask({ hours: [[21, 1]], weekdays: [6] }, 6);
  expect(mask[24]).toBe(1);
  expect(mask[24 + 21]).toBe(0);
  expect(mask[7 * 24 + 21]).toBe(1);
});

test('a window and its complement share the year between them', () => {
  const hour = fc.integer({ min: 0, max: 23 });
  fc.assert(
    fc.property(hour, hour, (from, to) => {
      fc.pre(from !== to);
      const inside = acceptedMask({ hours: [[from, to]] }, 0);
      const outside = acceptedMask({ hours: [[to, from]] }, 0);
      expect(inside.every((value, h) => value + outside[h]! === 1)).toBe(true);
    }),
    { numRuns: 40 },
  );
});

test('windows that are empty, broken or outside the day are refused', () => {
  expect(() => acceptedMask({ hours: [[8, 8]] }, 0)).toThrow('a whole day is [0, 24]');
  expect(() => acceptedMask({ hours: [[8.5, 20]] }, 0)).toThrow('must be whole');
  expect(() => acceptedMask({ hours: [[8, 25]] }, 0)).toThrow('must be 0 to 24, got 25');
  expect(() => acceptedMask({ months: [13] }, 0)).toThrow('accepted month must be 1 to 12, got 13');
});

describe('exercise runs', () => {
  test('come every so many days at their hour', () => {
    const mask = exerciseMask({ everyDays: 30, minutes: 15 }, acceptedMask({}, 0));
    expect(count(mask)).toBe(12);
    expect(mask[29 * 24 + 10]).toBe(1);
    expect(mask[59 * 24 + 10]).toBe(1);
  });

  test('move to the next accepted hour', () => {
    const mask = exerciseMask({ everyDays: 7, minutes: 15, atHour: 6 }, acceptedMask({ hours: [[9, 20]] }, 0));
    expect(mask[6 * 24 + 6]).toBe(0);
    expect(mask[6 * 24 + 9]).toBe(1);
    expect(count(mask)).toBe(52);
  });

  test('are left out while the engine is not accepted at all', () => {
    const mask = exerciseMask({ everyDays: 7, minutes: 15 }, acceptedMask({ months: [1] }, 0));
    expect(count(mask)).toBe(4);
  });

  test('are on whole days at whole hours', () => {
    const accepted = acceptedMask({}, 0);
    expect(() => exerciseMask({ everyDays: 7.5, minutes: 15 }, accepted)).toThrow('got 7.5 and 10');
    expect(() => exerciseMask({ everyDays: 7, minutes: 15, atHour: 8.5 }, accepted)).toThrow('got 7 and 8.5');
  });
});
