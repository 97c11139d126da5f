import fc from 'fast-check';
import { expect, test } from 'vitest';
import { settledContent } from './settled-content.js';

const energies = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 10, maxLength: 10 });

function yearFrom(start: number, supply: readonly number[], draw: readonly number[], capacity: number, loss: number) {
  let content = start;
  for (let h = 0; h < supply.length; h++) {
    content = Math.max(0, Math.min(capacity, content * (1 - loss) + supply[h]! - draw[h]!));
  }
  return content;
}

test('plain repetition of the year comes to the same content, from empty and from full', () => {
  const loss = fc.integer({ min: 10, max: 500 }).map((part) => part / 1000);
  const capacity = fc.integer({ min: 0, max: 500 });
  fc.assert(
    fc.property(energies, energies, capacity, loss, (supply, draw, capacityWh, lossPerH) => {
      const settled = settledContent(supply, draw, capacityWh, lossPerH, 0);
      let empty = 0;
      let full = capacityWh;
      for (let year = 0; year < 400; year++) {
        empty = yearFrom(empty, supply, draw, capacityWh, lossPerH);
        full = yearFrom(full, supply, draw, capacityWh, lossPerH);
      }
      expect(settled).toBeCloseTo(empty, 8);
      expect(settled).toBeCloseTo(full, 8);
    }),
    { numRuns: 200, seed: 31 },
  );
});

test('a lossless store that gains a little every year settles full, one that loses a little empty at some hour', () => {
  expect(settledContent([10, 0], [0, 9.999], 1e6, 0, 0)).toBeCloseTo(1e6 - 9.999, 6);
  expect(settledContent([10, 0], [0, 10.001], 1e6, 0, 1e6)).toBe(0);
});
