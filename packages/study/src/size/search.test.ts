import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchSmallest } from './search.js';

interface Thing {
  meets: boolean;
  measure: number;
  atLeast: number;
  tie: number;
}

// Few different numbers, so that measures, bounds and tie breaks are often equal.
const things = fc.array(
  fc
    .record({
      meets: fc.boolean(),
      atLeast: fc.integer({ min: 0, max: 5 }),
      over: fc.integer({ min: 0, max: 4 }),
      tie: fc.integer({ min: 0, max: 2 }),
    })
    .map(({ over, ...thing }): Thing => ({ ...thing, measure: thing.atLeast + over })),
  { maxLength: 12 },
);

function search(list: readonly Thing[]) {
  const candidates = list.map((thing) => ({ design: thing, atLeast: thing.atLeast, tieBreak: [thing.tie] }));
  return searchSmallest(candidates, (thing) => ({ meets: thing.meets, measure: thing.measure, outcome: thing }));
}

test('finds what trying everything finds', () => {
  let found = 0;
  let skipped = 0;
  fc.assert(
    fc.property(things, (list) => {
      let best: Thing | null = null;
      for (const thing of list) {
        if (!thing.meets) continue;
        if (!best || thing.measure < best.measure || (thing.measure === best.measure && thing.tie < best.tie)) {
          best = thing;
        }
      }
      const result = search(list);
      expect(result.best).toBe(best);
      if (best) found++;
      skipped += list.length - result.tried.length;
    }),
    { numRuns: 2000 },
  );
  expect(found).toBeGreaterThan(500);
  expect(skipped).toBeGreaterThan(500);
});

test('tries everything before it says that nothing meets the targets', () => {
  const list = [3, 1, 2].map((atLeast) => ({ meets: false, measure: atLeast, atLeast, tie: 0 }));
  const { best, tried } = search(list);
  expect(best).toBeNull();
  expect(tried.map(({ measure }) => measure)).toEqual([1, 2, 3]);
});

test('stops at the first hit when the measure is known beforehand', () => {
  const list = [4, 2, 3, 1].map((atLeast) => ({ meets: atLeast >= 2, measure: atLeast, atLeast, tie: 0 }));
  expect(search(list).tried).toHaveLength(2);
});

test('a design that must not be built is passed over, and not counted as tried', () => {
  const candidates = [1, 2, 3].map((size) => ({ design: size, atLeast: size, tieBreak: [] }));
  const counts: number[] = [];
  const { best, tried } = searchSmallest(
    candidates,
    (size) => (size === 1 ? null : { meets: size > 2, measure: size, outcome: size }),
    (count) => counts.push(count),
  );
  expect([best, tried.map(({ outcome }) => outcome), counts]).toEqual([3, [2, 3], [1, 2]]);
});
