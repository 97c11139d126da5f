import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sequentPeak, sequentPeakWithLoss } from './sequent-peak.js';

const amounts = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 12, maxLength: 12 });

/** Largest demand less supply over every run of steps, wrapping round the end once: the mass-curve definition. */
function bruteForce(supply: readonly number[], demand: readonly number[]): number {
  let largest = 0;
  for (let from = 0; from < supply.length; from++) {
    let deficit = 0;
    for (let length = 1; length <= supply.length; length++) {
      const t = (from + length - 1) % supply.length;
      deficit += demand[t]! - supply[t]!;
      largest = Math.max(largest, deficit);
    }
  }
  return largest;
}

test('the store is the largest shortage of any run of steps', () => {
  let closed = 0;
  fc.assert(
    fc.property(amounts, amounts, (supply, demand) => {
      const peak = sequentPeak(supply, demand);
      const short = demand.reduce((a, b) => a + b, 0) - supply.reduce((a, b) => a + b, 0);
      if (!peak.closes) {
        expect(peak.shortBy).toBe(short);
        return;
      }
      closed++;
      expect(short).toBeLessThanOrEqual(0);
      expect(peak.storeSize).toBe(bruteForce(supply, demand));
    }),
    { numRuns: 300, seed: 1883 },
  );
  expect(closed).toBeGreaterThan(50);
});

test('the store is full before the shortage that sizes it and empty after', () => {
  expect(sequentPeak([9, 9, 0, 0, 0, 9], [2, 2, 2, 2, 2, 2])).toEqual({
    closes: true,
    storeSize: 6,
    fullAfter: 1,
    emptyAfter: 4,
  });
  expect(sequentPeakWithLoss([9, 9, 0, 0, 0, 9], [2, 2, 2, 2, 2, 2], 0)).toEqual({
    closes: true,
    storeSize: 6,
    fullAfter: 1,
    emptyAfter: 4,
  });
});

test('without loss the backward method gives the same store as the forward one', () => {
  fc.assert(
    fc.property(amounts, amounts, (supply, demand) => {
      const forward = sequentPeak(supply, demand);
      const backward = sequentPeakWithLoss(supply, demand, 0);
      expect(backward.closes).toBe(forward.closes);
      if (forward.closes && backward.closes) expect(backward.storeSize).toBe(forward.storeSize);
    }),
    { numRuns: 300, seed: 1963 },
  );
});

test('with loss, the store found just suffices and anything smaller does not', () => {
  let closed = 0;
  const worstUnmet = (supply: readonly number[], demand: readonly number[], loss: number, size: number): number => {
    let content = Math.min(size, 1000);
    let unmet = 0;
    for (let step = 0; step < 2 * 1000 * supply.length; step++) {
      const t = step % supply.length;
      const after = content * (1 - loss) + supply[t]! - demand[t]!;
      if (step >= 1000 * supply.length) unmet = Math.max(unmet, -after);
      content = Math.max(0, Math.min(size, after));
    }
    return unmet;
  };
  fc.assert(
    fc.property(amounts, amounts, fc.double({ min: 0.001, max: 0.3, noNaN: true }), (supply, demand, loss) => {
      const peak = sequentPeakWithLoss(supply, demand, loss);
      if (!peak.closes) {
        expect(worstUnmet(supply, demand, loss, 1e9)).toBeGreaterThan(0);
        return;
      }
      if (peak.storeSize < 1) return;
      closed++;
      expect(worstUnmet(supply, demand, loss, peak.storeSize)).toBeLessThan(1e-9);
      expect(worstUnmet(supply, demand, loss, peak.storeSize * 0.99)).toBeGreaterThan(1e-3);
    }),
    { numRuns: 200, seed: 7 },
  );
  expect(closed).toBeGreaterThan(50);
});

test('what leaks away can keep a loop from closing that would close without loss', () => {
  const supply = [10, 0, 0, 0];
  const demand = [0, 0, 0, 9];
  expect(sequentPeak(supply, demand)).toMatchObject({ closes: true, storeSize: 9 });
  // Of 10 put in, 10 x 0.9^3 = 7.29 are left when 9 are asked for.
  const leaking = sequentPeakWithLoss(supply, demand, 0.1);
  expect(leaking.closes).toBe(false);
  if (!leaking.closes) expect(leaking.shortBy).toBeCloseTo(9 - 7.29, 12);
});

test('series that do not fit or hold no amounts are refused', () => {
  expect(() => sequentPeak([1, 2], [1])).toThrow('supply and demand must have the same length above 0, got 2 and 1');
  expect(() => sequentPeak([1, Number.NaN], [1, 1])).toThrow(
    'supply at index 1 must be 0 to 1000000000000000, got NaN',
  );
  expect(() => sequentPeakWithLoss([1], [1], 1)).toThrow(RangeError);
});
