import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DesignAxis } from './axis.js';
import { designsInBlock, gridChanges, gridDesign, gridSize } from './grid.js';

const someAxes = fc
  .array(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 4 })
  .map((lengths): DesignAxis[] =>
    lengths.map((length, a) => ({ path: `loads.${a}.count`, values: Array.from({ length }, (_, i) => i + 1) })),
  );

test('the numbers from 1 to the size of the grid are all its combinations, each once', () => {
  fc.assert(
    fc.property(someAxes, (axes) => {
      const size = gridSize(axes);
      const seen = new Set<string>();
      const ids = new Set<string>();
      for (let number = 1; number <= size; number++) {
        const { values, id } = gridDesign(axes, number);
        for (const [a, value] of values.entries()) expect(axes[a]!.values).toContain(value);
        seen.add(values.join());
        ids.add(id);
      }
      expect(seen.size).toBe(size);
      expect(ids.size).toBe(size);
    }),
  );
});

test('the last axis turns fastest', () => {
  const axes = [
    { path: 'arrays.0.strings', values: [2, 3] },
    { path: 'bank.capacity', values: ['500 Ah', '1000 Ah', '2000 Ah'] },
  ];
  expect(gridDesign(axes, 1).values).toEqual([2, '500 Ah']);
  expect(gridDesign(axes, 2).values).toEqual([2, '1000 Ah']);
  expect(gridDesign(axes, 4).values).toEqual([3, '500 Ah']);
  expect(designsInBlock(axes)).toBe(3);
  expect(designsInBlock(axes.slice(1))).toBe(3);
  expect(designsInBlock([{ path: 'bank.voltage', values: [12, 24] }, ...axes.slice(1)])).toBe(3);
});

test('a combination keeps its id when ranges are added to, reordered or start elsewhere', () => {
  const strings = { path: 'arrays.0.strings', values: [2, 3] };
  const capacity = { path: 'bank.capacity', values: ['500 Ah', '1000 Ah'] };
  const { id } = gridDesign([strings, capacity], 4);
  expect(gridDesign([capacity, strings], 4).id).toBe(id);
  expect(
    gridDesign(
      [
        { ...strings, values: [3] },
        { ...capacity, values: ['250 Ah', '750 Ah', '1000 Ah'] },
      ],
      3,
    ).id,
  ).toBe(id);
  expect(gridDesign([strings, capacity], 3).id).not.toBe(id);
  expect(id).toMatch(/^[0-9a-f]{16}$/);
});

test('a variant is chosen, not set, and a key goes before the keys inside it', () => {
  const axes = [
    { path: 'variant', values: ['base', 'fixed'] },
    { path: 'bank.cabinet.insulation', values: ['1 W/K'] },
    { path: 'bank', values: [{ chemistry: 'flooded-lead-acid' }] },
  ];
  expect(gridChanges(axes, gridDesign(axes, 1).values).variant).toBeUndefined();
  const { variant, changes } = gridChanges(axes, gridDesign(axes, 2).values);
  expect(variant).toBe('fixed');
  expect(Object.keys(changes)).toEqual(['bank', 'bank.cabinet.insulation']);
});

// By sha256sum of [["arrays.0.strings",3],["bank.capacity","1000 Ah"]].
test('an id is the digest of the values by their paths, whatever program reads it', () => {
  const axes = [
    { path: 'bank.capacity', values: ['500 Ah', '1000 Ah'] },
    { path: 'arrays.0.strings', values: [2, 3] },
  ];
  expect(gridDesign(axes, 4).id).toBe('31b6307522fd4fd0');
});
