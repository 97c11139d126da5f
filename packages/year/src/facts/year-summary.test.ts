import { expect, test } from 'vitest';
import { losslessController } from '../loop/plant.fixture.js';
import type { PreparedArray } from '../prepare/prepare-array.js';
import { exampleSite, exampleYear } from './example.fixture.js';
import { always, weatherOf } from './year.fixture.js';
import { autonomyOfYear, yearSummary } from './year-summary.js';

/** An array of so many watts whose plane has an even light. */
const arrayOf = (ratedW: number, planeWm2: number): PreparedArray =>
  ({
    name: 'an array',
    ratedW,
    plane: { planeWm2: always(planeWm2) },
    controller: losslessController(always(0)),
  }) as never;

test('the weather is told by its sums: sun, mean and lowest air, hours that were mended', () => {
  const airC = always(10);
  airC[100] = -34;
  airC[200] = 54;
  const ghiWm2 = always(0);
  ghiWm2.set([300, 700], 5000);
  const mended = new Uint8Array(8760);
  mended.set([1, 2, 0, 1], 50);
  const { weather } = yearSummary(exampleYear({}, weatherOf({ airC, ghiWm2, mended })), []);
  expect(weather).toMatchObject({ source: 'a sky made by hand', hours: 8760, ghiKWhPerM2: 1, minAirTemp: -34 });
  expect(weather.meanAirTemp).toBeCloseTo(10, 9);
  expect(weather).toMatchObject({ mendedHours: 3, verdict: null, verdictLine: null, snowFrom: null });
  expect(yearSummary(exampleYear(), []).weather.mendedHours).toBe(0);
});

test('weather that was judged is told with its verdict', () => {
  const judgement = { verdict: 'usable', line: 'the sun is a bit strong', notices: [] } as never;
  expect(yearSummary(exampleYear({}, weatherOf({ judgement })), []).weather).toMatchObject({
    verdict: 'usable',
    verdictLine: 'the sun is a bit strong',
  });
});

// 100 W/m2 on three kilowatts and 500 on one: 200 on each of four, for 8760 h.
test('the light of several arrays is weighted by their power', () => {
  const { array } = yearSummary({ ...exampleYear(), arrays: [arrayOf(3000, 100), arrayOf(1000, 500)] }, []);
  expect(array.ratedKW).toBe(4);
  expect(array.planeKWhPerM2).toBeCloseTo(0.2 * 8760, 6);
});

test('a full cycle is what the bank holds between its label and empty', () => {
  const year = exampleYear();
  const { bank } = year.plant;
  year.ledger.bankDischargeWh[3] = 3 * bank.storedWh(1);
  // Where the engine gave what the bank lost, the hour closes.
  year.ledger.dcServedWh[3] = 3 * bank.storedWh(1);
  year.ledger.generatorWh[3] = 3 * bank.storedWh(1);
  expect(yearSummary(year, []).bank.fullCycles).toBeCloseTo(3, 9);
});

test('fuel has a cost where it has a price, and a place without an engine has none', () => {
  const year = exampleYear();
  year.ledger.fuelL[7] = 100;
  expect(exampleSite.generator!.fuel.price).toBe(1.55);
  expect(yearSummary(year, []).generator.fuelCost).toBeCloseTo(155, 9);
  const { generator: _, ...without } = exampleSite;
  expect(yearSummary({ ...year, site: without as never }, []).generator.fuelCost).toBeNull();
});

// 1000 Ah at some 25 V, 70 % above the floor: a week of 100 W.
test('autonomy is that of a full bank in the darkest month of sun and load', () => {
  const ghiWm2 = always(100).map((w, h) => (h >= 744 && h < 1416 ? 10 : w));
  const year = exampleYear({ dcW: (h) => (h >= 744 && h < 1416 ? 100 : 900) }, weatherOf({ ghiWm2 }));
  const { darkSeason, bank } = yearSummary(year, []);
  expect(darkSeason.month).toBe(2);
  expect(bank.autonomyDays).toBeGreaterThan(6.5);
  expect(bank.autonomyDays).toBeLessThan(7.7);
  expect(autonomyOfYear(year)).toBe(bank.autonomyDays);
});

test('a year that does not repeat itself is told as such', () => {
  const codes = (settledAfterYears: number | null) =>
    yearSummary({ ...exampleYear(), settledAfterYears }, []).cautions.map(({ code }) => code);
  expect(codes(null)).toContain('not-settled');
  expect(codes(3)).not.toContain('not-settled');
});
