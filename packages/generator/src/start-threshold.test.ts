import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lookAheadMask } from './look-ahead.js';
import { type StartRule, startThresholdYear } from './start-threshold.js';

const always = new Uint8Array(8760).fill(1);
const bright = 3000;
const sunWithDull = (...dullDays: number[]) =>
  Float64Array.from({ length: 365 }, (_, day) => (dullDays.includes(day) ? 300 : bright));
const daysOf = (mask: Uint8Array) => [
  ...new Set(
    Array.from(mask.keys())
      .filter((h) => mask[h] === 1)
      .map((h) => Math.floor(h / 24)),
  ),
];

describe('tomorrow', () => {
  test('a perfect look ahead marks the day before a dull one, also over New Year', () => {
    const mask = lookAheadMask({ dailySunWhM2: sunWithDull(100, 0), dullBelowWhM2: 1000, honesty: 'perfect' });
    expect(daysOf(mask)).toEqual([99, 364]);
    expect(mask.reduce((sum, value) => sum + value, 0)).toBe(48);
  });

  test('persistence learns of a dull day in its evening and remembers it until the next evening', () => {
    const mask = lookAheadMask({ dailySunWhM2: sunWithDull(100), dullBelowWhM2: 1000, honesty: 'persistence' });
    const hours = Array.from(mask.keys()).filter((h) => mask[h] === 1);
    expect(hours[0]).toBe(100 * 24 + 18);
    expect(hours[hours.length - 1]).toBe(101 * 24 + 17);
    expect(hours.length).toBe(24);
  });

  test('persistence never uses the sun of a day to come', () => {
    const sun = fc.array(fc.integer({ min: 0, max: 6000 }), { minLength: 365, maxLength: 365 });
    fc.assert(
      fc.property(sun, fc.integer({ min: 1, max: 364 }), (days, changed) => {
        const mask = (values: number[]) =>
          lookAheadMask({ dailySunWhM2: Float64Array.from(values), dullBelowWhM2: 2000, honesty: 'persistence' });
        const other = days.with(changed, 6000 - days[changed]!);
        expect(mask(other).subarray(18, changed * 24 + 18)).toEqual(mask(days).subarray(18, changed * 24 + 18));
      }),
      { numRuns: 30 },
    );
  });

  test('a day of just the light that is asked for is not dull', () => {
    const mask = lookAheadMask({ dailySunWhM2: sunWithDull(100), dullBelowWhM2: 300, honesty: 'perfect' });
    expect(daysOf(mask)).toEqual([]);
    expect(daysOf(lookAheadMask({ dailySunWhM2: sunWithDull(100), dullBelowWhM2: 301, honesty: 'perfect' }))).toEqual([
      99,
    ]);
  });

  test('a day without a number is refused', () => {
    const dailySunWhM2 = sunWithDull().fill(Number.NaN, 364);
    expect(() => lookAheadMask({ dailySunWhM2, dullBelowWhM2: 1000, honesty: 'perfect' })).toThrow('day 364');
  });

  test('a year of another length is refused', () => {
    const dailySunWhM2 = new Float64Array(366);
    expect(() => lookAheadMask({ dailySunWhM2, dullBelowWhM2: 1000, honesty: 'perfect' })).toThrow('365 days, got 366');
  });
});

describe('the state of charge that starts the engine', () => {
  test('is the highest that any rule asks for in that hour', () => {
    const rules: StartRule[] = [
      { kind: 'charge', below: 0.4 },
      { kind: 'hand', below: 0.55, looksAt: [8, 18] },
      { kind: 'dull-tomorrow', below: 0.7, dullBelowWhM2: 1000, honesty: 'perfect', looksAt: [18, 19] },
    ];
    const threshold = startThresholdYear(rules, always, sunWithDull(100));
    expect(threshold[98 * 24 + 18]).toBe(0.55);
    expect(threshold[99 * 24 + 17]).toBe(0.4);
    expect(threshold[99 * 24 + 18]).toBe(0.7);
    expect(threshold[99 * 24 + 20]).toBe(0.4);
  });

  test('is zero where no start is accepted', () => {
    const allowed = new Uint8Array(8760);
    allowed[12] = 1;
    const threshold = startThresholdYear([{ kind: 'charge', below: 0.4 }], allowed);
    expect(threshold[11]).toBe(0);
    expect(threshold[12]).toBe(0.4);
  });

  test('needs the accepted hours of a whole year', () => {
    expect(() => startThresholdYear([{ kind: 'charge', below: 0.4 }], new Uint8Array(24))).toThrow(
      '8760 hours, got 24',
    );
  });

  test('is zero all year when only the voltage starts the engine', () => {
    const threshold = startThresholdYear([{ kind: 'voltage', belowV: 23.5, forMin: 10 }], always);
    expect(threshold.every((below) => below === 0)).toBe(true);
  });

  test('an added rule never lowers it', () => {
    const below = fc.integer({ min: 0, max: 1000 }).map((part) => part / 1000);
    const rule: fc.Arbitrary<StartRule> = fc.oneof(
      below.map((b) => ({ kind: 'charge' as const, below: b })),
      fc.record({
        kind: fc.constant('hand' as const),
        below,
        looksAt: fc.array(fc.integer({ min: 0, max: 23 }), { maxLength: 4 }),
      }),
    );
    fc.assert(
      fc.property(fc.array(rule, { maxLength: 3 }), rule, (rules, added) => {
        const before = startThresholdYear(rules, always);
        const after = startThresholdYear([...rules, added], always);
        expect(after.every((value, h) => value >= before[h]!)).toBe(true);
      }),
      { numRuns: 30 },
    );
  });
});
