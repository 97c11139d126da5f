import { expect, test } from 'vitest';
import { hydrogenRange, hydrogenTechnology } from '../store/hydrogen.js';
import { closingAt, inventedPrices, judged, neverClosing, plainTechnology } from './study.fixture.js';
import { amount, inMoney, verdictText } from './verdict-text.js';

const off = { minimumLoad: 0, standbyW: 0 };
const hydrogen = hydrogenTechnology(hydrogenRange('200 bar').typical, off, off);
const priced = (storePerKWh: number | null, fuelPerL: number | null = 1.6) => ({
  ...inventedPrices,
  store: { ...inventedPrices.store, storePerKWh },
  engine: { ...inventedPrices.engine, fuelPerL },
});

test('amounts have two digits below 10 and whole numbers from there on', () => {
  expect([0.0004, 0.0005, 0.0123, 1.26, 9.94, 9.95, 123.4, -9.94, -9.95].map(amount)).toEqual([
    ...['0', '0.0005', '0.012', '1.3', '9.9', '10', '123', '-9.9', '-10'],
  ]);
  expect([inMoney(1234.5, undefined), inMoney(1234.5, 'crowns')]).toEqual(['1235', '1235 crowns']);
});

test('a store that loses on the way brings less than its round trip, and the sentence says by what', () => {
  const leaking = { ...plainTechnology, standingLossPerH: 0.05 };
  expect(verdictText(judged(612, 380), null, 'metric')).toContain('35 % round trip brings 214 kWh of the 380 kWh');
  expect(verdictText(judged(612, 380, null, leaking), null, 'metric')).toContain(
    '35 % round trip less standby, loss while stored and what is below the minimum load brings',
  );
});

test('the array that would cover the year is named where this one does not, and where none does', () => {
  const text = (...closing: Parameters<typeof verdictText>[1][]) =>
    verdictText(judged(612, 380), closing[0]!, 'metric');
  expect(text(closingAt(150))).toMatch(
    / An array 150 times this one would cover it \(180 times with the usual allowance for unknown losses\)\.$/,
  );
  expect(text(closingAt(1.25, false))).toMatch(
    / An array 1\.25 times this one would need neither engine nor store \(1\.5 times with/,
  );
  expect(text(neverClosing(16))).toMatch(/ No array up to 16 times this one would cover it\.$/);
  expect(verdictText(judged(1400, 380), closingAt(2), 'metric')).not.toContain('would cover it');
});

test('money has the name that the site file gives it, and both prices stand beside what they are now', () => {
  const dear = judged(1400, 380, priced(20));
  const { store, engine, breakEvenFuelPerL, breakEvenStorePerKWh } = dear.cost!;
  const text = verdictText(dear, null, 'metric', 'crowns');
  expect(text).toContain(
    `over 20 years the store costs ${store!.total.toFixed(0)} crowns and the engine ${engine!.total.toFixed(0)} crowns`,
  );
  expect(text).toContain(`cost the same at ${breakEvenStorePerKWh!.toPrecision(3)} per kWh of store (now 20).`);
  expect(text).toContain(`with fuel at ${breakEvenFuelPerL!.toPrecision(3)} per litre (now 1.6).`);
  // A US gallon is 3.785 L: 1.6 a litre is 6.06 a gallon.
  expect(verdictText(dear, null, 'us')).toMatch(/ per gallon \(now 6\.06\)\.$/);
});

test('a price that is not known has no now', () => {
  const text = verdictText(judged(1400, 380, priced(null)), null, 'metric');
  expect(text).toMatch(/ per kWh of store\.$/);
  expect(text).not.toContain('fuel at');
  expect(verdictText(judged(1400, 380, priced(20, null)), null, 'metric')).toMatch(/with fuel at [\d.]+ per litre\.$/);
});

test('a free store that would not pay, and a store that pays though fuel were free, are told so', () => {
  const dear = { ...priced(20), store: { ...priced(20).store, otherFirstCost: 1e6 } };
  expect(verdictText(judged(1400, 380, dear), null, 'metric')).toContain(
    'Even a free store would not pay for its converters.',
  );
  const cheap = { ...priced(0), store: { ...priced(0).store, otherFirstCost: 0, upkeepPerYear: 0 } };
  const text = verdictText(judged(1400, 0.1, cheap), null, 'metric');
  expect(text).toContain('Worth it: over 20 years');
  expect(text).toContain('The store pays even if fuel were free.');
});

// 100 kWh from a fuel cell of 47.5 % need 210.5 kWh of lower heat: 6.3 kg, 14 lb. 220 L are 58 gal.
test('hydrogen has a mass in either system and its caution on a line of its own, but not where there is nothing', () => {
  const some = judged(1400, 100, null, hydrogen);
  expect(verdictText(some, null, 'metric')).toMatch(/211 kWh \(6\.3 kg of hydrogen\).*220 L of fuel.*\nHydrogen burns/);
  expect(verdictText(some, null, 'us')).toMatch(/\(14 lb of hydrogen\).*58 gal of fuel/);
  expect(verdictText(judged(1400, 100), null, 'metric')).not.toContain('ydrogen');
  expect(verdictText(judged(1400, 0, null, hydrogen), null, 'metric')).toBe(
    'Nothing to retire: sun and bank carry this load without an engine.',
  );
});

// Demand in two of four quarters, surplus in the others: a small store is filled and emptied twice.
test('a store is turned over as often as it is emptied', () => {
  expect(verdictText(judged(1400, 380), null, 'metric')).toContain('turned over once a year');
  const one = judged(1400, 380);
  const twice = structuredClone(one);
  twice.size.year.totals.givenWh *= 2;
  expect(verdictText(twice, null, 'metric')).toContain('turned over 2 times a year');
  const none = { ...one, store: { ...one.store, store: { ...one.store.store, capacityWh: 0 } } };
  expect(verdictText(none, null, 'metric')).toContain('turned over 0 times a year');
});
