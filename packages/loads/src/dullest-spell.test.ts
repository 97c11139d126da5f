import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dullestSpell } from './dullest-spell.js';
import { addEvent } from './load-event.js';

const everyDay = (whM2: (day: number) => number) =>
  Float64Array.from({ length: 8760 }, (_, h) => (h % 24 === 12 ? whM2(Math.floor(h / 24)) : 0));

test('five dull days are found where they are', () => {
  const ghi = everyDay((day) => (day >= 340 && day < 345 ? 120 : 900));
  expect(dullestSpell(ghi, 5)).toEqual({ firstDay: 340, firstHour: 8160, whM2PerDay: 120 });
});

test('a dull spell over New Year is found in one piece', () => {
  const ghi = everyDay((day) => (day >= 362 || day < 2 ? 50 : 900));
  expect(dullestSpell(ghi, 5).firstDay).toBe(362);
});

test('no spell of the same length has less sun', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 365, maxLength: 365 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 0, max: 364 }),
      (days, length, other) => {
        const { whM2PerDay } = dullestSpell(
          everyDay((day) => days[day]!),
          length,
        );
        let sum = 0;
        for (let k = 0; k < length; k++) sum += days[(other + k) % 365]!;
        expect(whM2PerDay).toBeLessThanOrEqual(sum / length + 1e-9);
      },
    ),
    { numRuns: 50 },
  );
});

test('an event in the dullest spell begins on its first day', () => {
  const loadW = new Float64Array(8760);
  const party = { name: 'party', startHour: 18.5, hours: 5, uses: { powerW: 800 }, bus: 'ac' } as const;
  addEvent(loadW, { ...party, day: 'dullest-spell' }, 340);
  expect(Array.from(loadW.subarray(340 * 24 + 18, 340 * 24 + 24))).toEqual([400, 800, 800, 800, 800, 400]);
  expect(() => addEvent(loadW, { ...party, day: 'dullest-spell' }, undefined)).toThrow('no such day is given');
});
