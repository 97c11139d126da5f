import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type DesignOrder, designCount, numberAt, partPositions } from './order.js';

const numbers = (order: DesignOrder) => Array.from({ length: designCount(order) }, (_, at) => numberAt(order, at));

test('without a sample every design of the grid has its turn', () => {
  expect(numbers({ gridSize: 4, sample: null })).toEqual([1, 2, 3, 4]);
});

const someOrder = fc
  .record({
    gridSize: fc.integer({ min: 1, max: 500 }),
    share: fc.integer({ min: 0, max: 1000 }).map((part) => part / 1000),
    seed: fc.nat(),
  })
  .map(({ gridSize, share, seed }) => ({
    gridSize,
    sample: { count: Math.max(1, Math.round(gridSize * share)), seed },
  }));

test('a sample rises, stays in the grid and takes no design twice', () => {
  fc.assert(
    fc.property(someOrder, (order) => {
      let before = 0;
      for (const number of numbers(order)) {
        expect(number).toBeGreaterThan(before);
        before = number;
      }
      expect(before).toBeLessThanOrEqual(order.gridSize);
    }),
  );
});

test('a sample of the whole grid is the grid, and the same seed draws the same sample', () => {
  expect(numbers({ gridSize: 50, sample: { count: 50, seed: 3 } })).toEqual(numbers({ gridSize: 50, sample: null }));
  const order = { gridSize: 1e6, sample: { count: 20, seed: 7 } };
  expect(numbers(order)).toEqual(numbers(order));
  expect(numbers(order)).not.toEqual(numbers({ ...order, sample: { count: 20, seed: 8 } }));
});

test('over many seeds every design is drawn equally often', () => {
  // Half of ten designs for each of 4000 seeds: 2000 times each; the standard deviation is sqrt(4000 / 4) = 32.
  const drawn = new Array<number>(10).fill(0);
  for (let seed = 0; seed < 4000; seed++) {
    for (const number of numbers({ gridSize: 10, sample: { count: 5, seed } })) drawn[number - 1]!++;
  }
  for (const times of drawn) expect(Math.abs(times - 2000)).toBeLessThan(5 * 32);
});

test('a sample of the largest grid stays exact', () => {
  const gridSize = Number.MAX_SAFE_INTEGER;
  const order = { gridSize, sample: { count: gridSize, seed: 1 } };
  expect(numberAt(order, gridSize - 1)).toBe(gridSize);
  expect(numberAt(order, 2 ** 40)).toBe(2 ** 40 + 1);
});

test('the parts hold every position once, in shares that differ by one at most', () => {
  fc.assert(
    fc.property(fc.nat(10_000), fc.integer({ min: 1, max: 40 }), (count, of) => {
      let at = 0;
      for (let index = 1; index <= of; index++) {
        const { from, to } = partPositions(count, { index, of });
        expect(from).toBe(at);
        expect(Math.abs(to - from - count / of)).toBeLessThan(1);
        at = to;
      }
      expect(at).toBe(count);
    }),
  );
});

test('there is no part 0, and none beyond the last', () => {
  for (const part of [
    { index: 0, of: 3 },
    { index: 4, of: 3 },
    { index: 1.5, of: 3 },
    { index: 1, of: 0 },
    { index: 1, of: 2.5 },
  ]) {
    expect(() => partPositions(10, part)).toThrow(`part must be from 1/N to N/N, got ${part.index}/${part.of}`);
  }
});

// Stretches of 2^19 designs: two of them have the same place drawn by chance once in half a million.
test('stretches beyond the four thousand millionth are drawn by themselves', () => {
  const width = 2 ** 19;
  const order = { gridSize: 2 ** 52, sample: { count: 2 ** 33, seed: 4 } };
  const inStretch = (position: number) => numberAt(order, position) - position * width;
  expect(inStretch(5 + 2 ** 32)).not.toBe(inStretch(5));
  expect(inStretch(6)).not.toBe(inStretch(5));
});
