import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import type { DesignYears } from './merit.js';
import { untilClear } from './until-clear.js';

/** Designs whose engine hours in a year are given by its number, and the counts of years that were asked for. */
function growing(...hours: ((year: number) => number)[]) {
  const asked: number[] = [];
  const designs = (): DesignYears[] =>
    hours.map((of, name) => ({
      name: String(name),
      years: Array.from(
        { length: asked.at(-1)! },
        (_, year) => ({ generatorHours: of(year), darkKWh: 0 }) as YearFigures,
      ),
    }));
  return {
    asked,
    reach: async (count: number) => void asked.push(count),
    soFar: () => ({ designs: designs() }),
  };
}

const steady = () => 50;
/** Two hours more in the mean, and each year's 40 hours up or down hide it. */
const erratic = (year: number) => 52 + (year % 2 === 0 ? 40 : -40);

test('a best that is clear at once asks for no more years', async () => {
  const run = growing(steady, () => 70);
  const { designs } = await untilClear(run, 10);
  expect(run.asked).toEqual([10]);
  expect(designs[0]!.years).toHaveLength(10);
});

test('years are doubled while the best is in doubt, and end at a hundred', async () => {
  const run = growing(steady, erratic);
  await untilClear(run, 12);
  expect(run.asked).toEqual([12, 24, 48, 96, 100]);
});

test('years are doubled until the doubt is over', async () => {
  // From the 20th year on the second design runs far more.
  const run = growing(steady, (year) => (year < 20 ? erratic(year) : 150));
  await untilClear(run, 10);
  expect(run.asked).toEqual([10, 20, 40]);
});

test('a hundred years are not run twice, nor more of them than were asked for at first', async () => {
  const hundred = growing(steady, erratic);
  await untilClear(hundred, 100);
  expect(hundred.asked).toEqual([100]);
});

test('one design alone is never in doubt', async () => {
  const run = growing(erratic);
  await untilClear(run, 5);
  expect(run.asked).toEqual([5]);
});

// The third design must not be built, and is far the best: the doubt is between the other two.
test('a design that is only shown neither ends the doubt between the others nor makes one', async () => {
  const doubt = growing(steady, erratic, () => 1);
  await untilClear(doubt, 25, ['2']);
  expect(doubt.asked).toEqual([25, 50, 100]);
  const clear = growing(steady, () => 70, erratic);
  await untilClear(clear, 25, ['2']);
  expect(clear.asked).toEqual([25]);
});
