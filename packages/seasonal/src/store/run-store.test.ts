import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runStore } from './run-store.js';
import type { SeasonalStore } from './seasonal-store.js';
import { sequentPeak } from './sequent-peak.js';

// Evenly between the two: `fc.double` is even over the exponents, so that nearly all of its numbers above 0 are next to nothing.
const share = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => min + ((max - min) * part) / 1_000_000);
const energies = fc.array(fc.oneof(fc.constant(0), share(0, 3000)), { minLength: 60, maxLength: 60 });
const converter = fc.record({
  efficiency: share(0.2, 1),
  powerW: share(0, 3000),
  minimumLoad: share(0, 0.5),
  standbyW: share(0, 40),
});
const anyStore: fc.Arbitrary<SeasonalStore> = fc.record({
  kind: fc.constant('own' as const),
  converterIn: converter,
  store: fc.record({ capacityWh: share(0, 40_000), standingLossPerH: fc.oneof(fc.constant(0), share(0, 0.2)) }),
  converterOut: converter,
});

const perfect = (capacityWh: number): SeasonalStore => ({
  kind: 'own',
  converterIn: { efficiency: 1, powerW: 1e6, minimumLoad: 0, standbyW: 0 },
  store: { capacityWh, standingLossPerH: 0 },
  converterOut: { efficiency: 1, powerW: 1e6, minimumLoad: 0, standbyW: 0 },
});

const sum = (amounts: ArrayLike<number>): number => Array.from(amounts).reduce((a, b) => a + b, 0);

test('the year ends as it began, and every watt-hour is given, spilled, lost or stays unmet', () => {
  fc.assert(
    fc.property(energies, energies, anyStore, share(0, 1), (surplus, demand, store, startShare) => {
      const year = runStore(surplus, demand, store, startShare * store.store.capacityWh);
      const { totals } = year;
      const into = sum(surplus) + sum(year.unmetWh);
      const losses = totals.converterInLossWh + totals.standingLossWh + totals.converterOutLossWh;
      const outOf = sum(demand) + totals.standbyWh + sum(year.spilledWh) + losses;
      expect(Math.abs(into - outOf)).toBeLessThan(1e-9 * (into + store.store.capacityWh + 1));
      expect(Math.abs(year.storedWh[59]! - year.startWh)).toBeLessThan(1e-9 * (into + store.store.capacityWh + 1));
    }),
    { numRuns: 500, seed: 11 },
  );
});

test('content stays between empty and full, and converters within their power', () => {
  fc.assert(
    fc.property(energies, energies, anyStore, (surplus, demand, store) => {
      const year = runStore(surplus, demand, store, 0);
      const over = 1 + 1e-12;
      for (let h = 0; h < 60; h++) {
        const within =
          year.storedWh[h]! >= 0 &&
          year.storedWh[h]! <= store.store.capacityWh &&
          year.takenWh[h]! <= Math.min(store.converterIn.powerW, surplus[h]!) * over &&
          year.givenWh[h]! <= store.converterOut.powerW * over &&
          year.spilledWh[h]! >= 0 &&
          year.unmetWh[h]! >= 0;
        if (!within) throw new Error(`hour ${h} is out of bounds`);
      }
    }),
    { numRuns: 200, seed: 12 },
  );
});

test('a larger store never leaves more unmet', () => {
  fc.assert(
    fc.property(energies, energies, anyStore, share(1, 5), (surplus, demand, store, factor) => {
      const larger = { ...store, store: { ...store.store, capacityWh: store.store.capacityWh * factor } };
      const small = runStore(surplus, demand, store, 0).totals.unmetWh;
      expect(runStore(surplus, demand, larger, 0).totals.unmetWh).toBeLessThanOrEqual(small + 1e-9 * (1 + sum(demand)));
    }),
    { numRuns: 500, seed: 13 },
  );
});

test('a lossless store of sequent-peak size leaves nothing unmet when supply covers demand, a smaller one does', () => {
  let closed = 0;
  fc.assert(
    fc.property(energies, energies, (surplus, demand) => {
      const peak = sequentPeak(surplus, demand);
      if (!peak.closes || peak.storeSize < 1) return;
      closed++;
      expect(runStore(surplus, demand, perfect(peak.storeSize), 0).totals.unmetWh).toBeLessThan(1e-9 * sum(demand));
      expect(runStore(surplus, demand, perfect(0.99 * peak.storeSize), 0).totals.unmetWh).toBeGreaterThan(1e-3);
    }),
    { numRuns: 300, seed: 14 },
  );
  expect(closed).toBeGreaterThan(50);
});

test('two years in a row repeat the settled year', () => {
  fc.assert(
    fc.property(energies, energies, anyStore, (surplus, demand, store) => {
      const lossy = { ...store, store: { ...store.store, standingLossPerH: 0.02 } };
      const { startWh, totals } = runStore(surplus, demand, lossy, 0);
      const twice = runStore([...surplus, ...surplus], [...demand, ...demand], lossy, store.store.capacityWh);
      expect(twice.startWh).toBeCloseTo(startWh, 6);
      expect(twice.totals.unmetWh).toBeCloseTo(2 * totals.unmetWh, 6);
      expect(twice.storedWh[59]!).toBeCloseTo(startWh, 6);
    }),
    { numRuns: 200, seed: 15 },
  );
});

test('two hours by hand', () => {
  const store: SeasonalStore = {
    kind: 'own',
    converterIn: { efficiency: 0.5, powerW: 800, minimumLoad: 0.25, standbyW: 0 },
    store: { capacityWh: 1000, standingLossPerH: 0.1 },
    converterOut: { efficiency: 0.8, powerW: 200, minimumLoad: 0, standbyW: 0 },
  };
  // Hour 0: of 1000 Wh surplus 800 are taken, 400 put in. Hour 1: 10 % leaks, 200 Wh given need 250 Wh of content.
  // Settled start c: ((c x 0.9 + 400) x 0.9) - 250 = c, so c = 110 / 0.19.
  const year = runStore([1000, 150], [0, 300], store, 0);
  const c = 110 / 0.19;
  expect(year.startWh).toBeCloseTo(c, 9);
  expect(Array.from(year.takenWh)).toEqual([800, 0]);
  expect(Array.from(year.spilledWh)).toEqual([200, 150]);
  expect(year.storedWh[0]).toBeCloseTo(0.9 * c + 400, 9);
  expect(year.givenWh[1]).toBeCloseTo(200, 9);
  expect(year.unmetWh[1]).toBeCloseTo(100, 9);
  expect(year.totals).toMatchObject({ fullestHour: 0, emptiestHour: 1, converterInHours: 1, unmetHours: 1 });
});

test('idle converters draw their standby from surplus first and from the store otherwise', () => {
  const store = perfect(5000);
  store.converterIn.standbyW = 10;
  store.converterIn.minimumLoad = 0.0001; // 100 W
  store.converterOut.standbyW = 5;
  const { totals } = runStore([1000, 0, 50], [0, 20, 0], store, 0);
  // Hour 0: 5 for converter out. Hour 1: 10 for converter in. Hour 2: both, all from a surplus too thin to run on.
  expect(totals.standbyWh).toBeCloseTo(30, 12);
  expect(totals.givenWh).toBeCloseTo(30, 12);
  expect(totals.unmetWh).toBe(0);
});

test('converters below their minimum load, or stopped by an empty or full store, run part of the hour', () => {
  const store = perfect(300);
  store.converterIn.powerW = 400;
  store.converterOut.powerW = 1000;
  store.converterOut.minimumLoad = 0.2;
  // Hour 0 fills the store in three quarters of an hour. Hour 1 asks 50 W of a converter that runs at 200 W or more.
  // Hour 2 asks 1000 W of the 250 Wh left.
  const { totals } = runStore([400, 0, 0], [0, 50, 1000], store, 0);
  expect(totals.converterInHours).toBeCloseTo(0.75, 12);
  expect(totals.converterOutHours).toBeCloseTo(0.25 + 0.25, 12);
});

test('with supply exactly equal to draw any start is settled and the one given is kept', () => {
  expect(runStore([100, 0], [0, 100], perfect(1000), 400).startWh).toBe(400);
  expect(runStore([100, 0], [0, 100], perfect(1000), 950).startWh).toBe(900);
});

test('a store out of range is refused by name', () => {
  const store = perfect(100);
  expect(() => runStore([1], [1], store, 101)).toThrow('startWh must be 0 to 100, got 101');
  store.converterOut.efficiency = 0;
  expect(() => runStore([1], [1], store, 0)).toThrow('converterOut.efficiency must be above 0 and up to 1, got 0');
});

test('the sums of two hours by hand', () => {
  const store: SeasonalStore = {
    kind: 'own',
    converterIn: { efficiency: 0.5, powerW: 800, minimumLoad: 0, standbyW: 0 },
    store: { capacityWh: 1000, standingLossPerH: 0 },
    converterOut: { efficiency: 0.8, powerW: 200, minimumLoad: 0, standbyW: 0 },
  };
  // 800 of 1000 Wh give 400 at the store, of which 160 Wh drawn give 128; in three rounds the store is full (840 and 160 put
  // in), so in a settled year only 320 Wh of the 800 that the converter could take are taken.
  const { totals, startWh } = runStore([1000, 0], [0, 128], store, 0);
  expect(startWh).toBeCloseTo(840, 9);
  expect(totals).toMatchObject({ surplusWh: 1000, demandWh: 128, unmetHours: 0, fullestHour: 0, emptiestHour: 1 });
  expect(totals.takenWh).toBeCloseTo(320, 9);
  expect(totals.spilledWh).toBeCloseTo(680, 9);
  expect(totals.converterInLossWh).toBeCloseTo(160, 9);
  expect(totals.givenWh).toBeCloseTo(128, 9);
  expect(totals.converterOutLossWh).toBeCloseTo(32, 9);
  expect(totals.turnsPerYear).toBeCloseTo(160 / 1000, 9);
  expect([totals.fullestWh, totals.emptiestWh]).toEqual([1000, 840]);
  expect(totals.converterInHours).toBeCloseTo(320 / 800, 9);
  // It gives what is asked all the hour through.
  expect(totals.converterOutHours).toBeCloseTo(1, 9);
  expect(totals.standingLossWh).toBe(0);
});

test('each size of a store is refused by its own name', () => {
  const refuse = (change: (store: SeasonalStore) => void, words: string) => {
    const store = perfect(100);
    change(store);
    expect(() => runStore([1], [1], store, 0)).toThrow(words);
  };
  for (const side of ['converterIn', 'converterOut'] as const) {
    refuse((store) => Object.assign(store[side], { efficiency: 1.1 }), `${side}.efficiency`);
    refuse((store) => Object.assign(store[side], { minimumLoad: 1.1 }), `${side}.minimumLoad`);
    refuse((store) => Object.assign(store[side], { standbyW: -1 }), `${side}.standbyW`);
    refuse((store) => Object.assign(store[side], { powerW: -1 }), `${side}.powerW`);
  }
  refuse((store) => Object.assign(store.store, { standingLossPerH: 1 }), 'standingLossPerH');
  refuse((store) => Object.assign(store.store, { capacityWh: -1 }), 'store.capacityWh');
  expect(() => runStore([], [], perfect(1), 0)).toThrow('same length above 0, got 0 and 0');
  expect(() => runStore([1], [-1], perfect(1), 0)).toThrow('demandWh at index 0');
  expect(() => runStore([1], [1], perfect(1), -1)).toThrow('startWh');
});

test('without a store what comes and goes in one hour passes through, and nothing is turned over', () => {
  const { totals } = runStore([50, 0], [20, 20], perfect(0), 0);
  expect(totals).toMatchObject({ givenWh: 20, unmetWh: 20, unmetHours: 1, turnsPerYear: 0, standingLossWh: 0 });
});

test('a millionth of a watt-hour left open is an hour left open, a trillionth of what was asked is not', () => {
  expect(runStore([0], [1e-6], perfect(10), 0).totals.unmetHours).toBe(1);
  const lossy = perfect(1e6);
  lossy.converterOut = { ...lossy.converterOut, efficiency: 0.3 };
  expect(runStore([1e5, 0, 0], [0, 700, 700], lossy, 0).totals.unmetHours).toBe(0);
});
