import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shareRange } from './share-range.js';

const z = 1.6448536269514722;

// Wilson (1927): the bounds are the shares p for which the share seen lies z standard errors of p away.
test('each bound is as far from the share seen as Wilson asks', () => {
  for (const [count, total] of [
    [1, 20],
    [7, 100],
    [81, 263],
  ] as const) {
    const { share, low, high } = shareRange(count, total);
    for (const p of [low, high]) {
      expect(Math.abs(share - p)).toBeCloseTo(z * Math.sqrt((p * (1 - p)) / total), 12);
    }
  }
});

test('none of 100 years still leaves a few percent, z^2 / (n + z^2)', () => {
  expect(shareRange(0, 100)).toEqual({ share: 0, low: 0, high: expect.closeTo((z * z) / (100 + z * z), 12) });
});

test('counting the others instead mirrors the range', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 0, max: 1000 }), (total, part) => {
      const count = Math.round((part / 1000) * total);
      const some = shareRange(count, total);
      const others = shareRange(total - count, total);
      expect(some.low).toBeCloseTo(1 - others.high, 12);
      expect(some.low).toBeLessThanOrEqual(some.share);
      expect(some.high).toBeGreaterThanOrEqual(some.share);
    }),
  );
});
