import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import { commonAnswer } from './common-answer.js';

/** Years of so many engine hours, all in January and in the first week. */
const design = (name: string, hours: readonly number[]) => ({
  name,
  years: hours.map(
    (generatorHours) =>
      ({
        generatorHours,
        fuelLitres: 2 * generatorHours,
        darkHours: 0,
        darkKWh: 0,
        throttledKWh: 3,
        lowestStateOfCharge: 0.5,
        autonomyDays: 4,
        generatorMonthHours: [generatorHours, 0],
        generatorWeekHours: [generatorHours, 0],
      }) as unknown as YearFigures,
  ),
});
const weather = { count: 5, kind: 'real', spread: null } as const;
const base = design('base', [50, 60, 40, 55, 0]);
const worse = design('worse', [70, 80, 60, 75, 20]);
const best = design('best', [30, 40, 20, 35, 0]);

test('of each design the means, each year, and the hours of months and weeks are told', () => {
  const [of] = commonAnswer({ weather, designs: [base] }).designs;
  expect([of!.generatorHours.mean, of!.fuelLitres.mean, of!.darkKWh.mean]).toEqual([41, 82, 0]);
  expect(of!.hoursOfYears).toEqual([50, 60, 40, 55, 0]);
  expect(of!.litresOfYears).toEqual([100, 120, 80, 110, 0]);
  expect([of!.monthHours, of!.weekHours, of!.weekRuns]).toEqual([
    [41, 0],
    [41, 0],
    [0.8, 0],
  ]);
  expect(of!.ranked.generatorHours).toMatchObject({ worst: 60, worstYear: 1, usual: { value: 50 } });
});

test('the first design is the base, and what the others have more is told year by year', () => {
  const { designs } = commonAnswer({ weather, designs: [base, worse] });
  expect(designs[0]!.againstBase).toBeNull();
  expect(designs[1]!.againstBase!.generatorHours).toMatchObject({ mean: 20, verdict: 'more' });
  expect(designs[1]!.againstBase!.darkKWh).toMatchObject({ mean: 0, verdict: 'none' });
});

test('the leader is the design that no other is better than, and each of the others says what beats it', () => {
  const { leaders, beatenBy, merit, leftOut } = commonAnswer({ weather, designs: [base, worse, best] });
  expect([leaders, merit, leftOut]).toEqual([['best'], 'generatorHours', []]);
  expect(beatenBy).toEqual({ base: ['best'], worse: ['base', 'best'], best: [] });
});

test('a design over a limit is shown, and neither leads nor beats another', () => {
  const { designs, leaders, leftOut, beatenBy } = commonAnswer({ weather, designs: [base, worse, best] }, ['best']);
  expect(designs).toHaveLength(3);
  expect([leaders, leftOut]).toEqual([['base'], ['best']]);
  expect(beatenBy).toEqual({ base: [], worse: ['base'], best: [] });
});
