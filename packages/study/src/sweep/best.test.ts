import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BestDesigns } from './best.js';
import { resultColumns, type SweepResults, type SweepRow } from './row.js';

const row = (number: number, generatorHours: number, darkKWh: number): SweepRow => {
  const zeros = Object.fromEntries(resultColumns.map((name) => [name, 0])) as SweepResults;
  return {
    number,
    id: String(number),
    values: [],
    results: { ...zeros, generatorHours, darkKWh },
    limits: [],
    error: '',
  };
};

test('the best few are those that sorting all of them puts first, equals by their number', () => {
  const pair = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 2 }));
  fc.assert(
    fc.property(fc.array(pair), (figures) => {
      const rows = figures.map(([hours, dark], i) => row(i + 1, hours, dark));
      const best = new BestDesigns(3);
      for (const one of rows) best.add(one);
      const sorted = rows.toSorted(
        ({ results: a }, { results: b }) => a!.generatorHours - b!.generatorHours || a!.darkKWh - b!.darkKWh,
      );
      expect(best.summary().best.generatorHours).toEqual(sorted.slice(0, 3));
      expect(best.summary().designs).toBe(rows.length);
    }),
  );
});

test('designs that cannot be run are counted, the first one with its reason, and rank nowhere', () => {
  const best = new BestDesigns();
  best.add({ number: 1, id: 'a', values: [], results: null, limits: [], error: 'bank.capacity: found 1 A' });
  best.add({ number: 2, id: 'b', values: [], results: null, limits: [], error: 'another' });
  best.add(row(3, 10, 0));
  expect(best.summary()).toMatchObject({ designs: 3, failed: 2, firstError: 'design 1: bank.capacity: found 1 A' });
  expect(best.summary().best.fuelLitres.map(({ number }) => number)).toEqual([3]);
});

test('designs over a limit are counted, the first one with its limits, and are never among the best', () => {
  const best = new BestDesigns();
  best.add({ ...row(7, 1, 0), limits: ['cold-voltage', 'short-circuit'] });
  best.add({ ...row(8, 2, 0), limits: ['short-circuit'] });
  best.add(row(9, 30, 0));
  const { overLimits, firstLimits, front, best: of, designs, failed } = best.summary();
  expect([designs, failed, overLimits, firstLimits]).toEqual([3, 0, 2, 'design 7: cold-voltage, short-circuit']);
  expect(front.map(({ row: { number } }) => number)).toEqual([9]);
  expect(of.generatorHours.map(({ number }) => number)).toEqual([9]);
});

test('five of each ranking are kept unless another number is asked for', () => {
  const best = new BestDesigns();
  for (let number = 1; number <= 8; number++) best.add(row(number, 10 - number, 0));
  expect(best.summary().best.generatorHours.map(({ number }) => number)).toEqual([8, 7, 6, 5, 4]);
});
