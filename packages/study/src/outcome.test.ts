import { hoursPerYear, monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { type DesignOutcome, heavierFirst, outcomeOf, type Weight, weightOf } from './outcome.js';
import type { YearFigures } from './year-figures.js';

/** A design whose bank is lowest in the first hour of January at 0.3, in the last of January at 0.25, else at 0.9. */
function designOf(name: string, hours: readonly number[], of: Partial<YearFigures> = {}, month = 1): DesignOutcome {
  const lowestStateOfCharge = new Float64Array(hoursPerYear).fill(0.9);
  lowestStateOfCharge[0] = 0.3;
  lowestStateOfCharge[monthSpan(0).toHour - 1] = 0.25;
  lowestStateOfCharge[monthSpan(0).toHour] = 0.1;
  const own = { site: { name }, ledger: { lowestStateOfCharge }, summary: { darkSeason: { month } } };
  const common = hours.map(
    (generatorHours) => ({ generatorHours, starts: 4, fuelLitres: 10, darkKWh: 0, ...of }) as YearFigures,
  );
  return { own: own as unknown as YearResult, common };
}

test('a design is told by the means of its years and the lowest charge of its dark month', () => {
  expect(outcomeOf(designOf('base', [30, 50, 40], { starts: 6, fuelLitres: 60, darkKWh: 3 }))).toEqual({
    generatorHours: 40,
    starts: 6,
    fuelLitres: 60,
    darkKWh: 3,
    darkMonthLowest: 0.25,
  });
});

test('the dark month may be that of another design', () => {
  expect(outcomeOf(designOf('base', [1]), 2).darkMonthLowest).toBe(0.1);
  expect(outcomeOf(designOf('base', [1]), 3).darkMonthLowest).toBe(0.9);
});

test('what a thing weighs is what the years have more with it', () => {
  const withIt = designOf('with', [50, 60, 55], { starts: 9, fuelLitres: 90, darkKWh: 4 });
  const without = designOf('without', [40, 50, 45], { starts: 5, fuelLitres: 70, darkKWh: 1 });
  const weight = weightOf(withIt, without, 2);
  expect(weight.generatorHours).toMatchObject({ mean: 10, verdict: 'more' });
  expect(weight.darkKWh).toMatchObject({ mean: 3, verdict: 'more' });
  expect([weight.starts, weight.fuelLitres, weight.darkMonthLowestWithout]).toEqual([4, 20, 0.1]);
});

test('heaviest is what costs most engine hours, then fuel, then dark load', () => {
  const weight = (hours: number, fuelLitres: number, dark: number) =>
    ({ generatorHours: { mean: hours }, fuelLitres, darkKWh: { mean: dark } }) as Weight;
  const [hours, fuel, dark, light] = [weight(9, 0, 0), weight(5, 8, 0), weight(5, 3, 7), weight(5, 3, 2)];
  expect([light, fuel, hours, dark].sort(heavierFirst)).toEqual([hours, fuel, dark, light]);
});
