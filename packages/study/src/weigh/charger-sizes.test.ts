import { hoursPerYear } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import type { DesignOutcome } from '../outcome.js';
import type { YearFigures } from '../year-figures.js';
import { chargerSizes, chargerTrials } from './charger-sizes.js';

/** A set of 3 kW with a charger of 1 kW at 90 %: 2700 W are the most that a charger can take. */
const ac = {
  output: { bus: 'ac', power: 3000, charger: { power: 1000, efficiency: 0.9 } },
  fuel: { atFull: 2, idle: 0.5 },
};
const dc = { output: { bus: 'dc', power: 3000 }, fuel: { atFull: 2, idle: 0.5, kind: 'petrol' } };

const yearOf = (generator: object | undefined, runHours: number, hours = runHours): DesignOutcome => {
  const hourly = (value: number) => new Float64Array(hoursPerYear).fill(value, 0, runHours);
  const own = {
    site: { name: 'Otter Bend', generator },
    ledger: { generatorH: hourly(1), generatorWh: hourly(2000), lowestStateOfCharge: hourly(0.5) },
    summary: { darkSeason: { month: 1 } },
  } as unknown as YearResult;
  return { own, common: [{ generatorHours: hours, starts: 0, fuelLitres: 0, darkKWh: 0 } as YearFigures] };
};
const timesOf = (generator: object | undefined) =>
  chargerTrials(yearOf(generator, 10).own).map(({ id }) => id.replace('charger x ', ''));

test('a charger is tried up to the first size that takes all the set gives, which ends at what is there', () => {
  // 3 x 1000 W are the first above 2700 W.
  expect(timesOf(ac)).toEqual(['0.5', '0.75', '1.5', '2', '3']);
  const charger = (power: number) => ({ ...ac, output: { ...ac.output, charger: { power, efficiency: 0.9 } } });
  expect(timesOf(charger(1350))).toEqual(['0.5', '0.75', '1.5', '2']);
  expect(timesOf(charger(6000))).toEqual(['0.5', '0.75']);
  expect(timesOf(charger(500))).toEqual(['0.5', '0.75', '1.5', '2', '3', '4']);
  expect(timesOf(dc)).toEqual(['0.5', '0.75', '1.5', '2', '3', '4']);
  expect(timesOf(undefined)).toEqual([]);
});

test('a larger charger takes more of the same set, a larger set burns more in proportion', () => {
  const trial = (generator: object) =>
    chargerTrials(yearOf(generator, 10).own).find(({ id }) => id.endsWith(' 2'))!.site.generator;
  expect(trial(ac)).toEqual({ ...ac, output: { ...ac.output, charger: { power: 2000, efficiency: 0.9 } } });
  expect(trial(dc)).toEqual({ output: { bus: 'dc', power: 6000 }, fuel: { atFull: 4, idle: 1, kind: 'petrol' } });
});

/** Sizes of a DC set whose engine runs so long at each. */
const sizesOf = (hours: Record<string, number>) =>
  chargerSizes(yearOf(dc, 10, hours['1']), (id) => {
    const times = Number(id.replace('charger x ', ''));
    return yearOf({ ...dc, output: { bus: 'dc', power: 3000 * times } }, times === 4 ? 0 : 10, hours[times]);
  })!;
const falling = { '0.5': 100, '0.75': 80, '1': 60, '1.5': 50, '2': 47, '3': 46, '4': 46 };

test('each size is told with its power, its hours and what the engine gives while it runs', () => {
  const { sizes, varies, setLimitW } = sizesOf(falling);
  expect([varies, setLimitW]).toEqual(['output', null]);
  expect(sizes.map(({ times, powerW, outcome }) => [times, powerW, outcome.generatorHours])).toEqual([
    [0.5, 1500, 100],
    [0.75, 2250, 80],
    [1, 3000, 60],
    [1.5, 4500, 50],
    [2, 6000, 47],
    [3, 9000, 46],
    [4, 12_000, 46],
  ]);
  expect([sizes[0]!.meanOutputW, sizes[6]!.meanOutputW]).toEqual([2000, 0]);
});

test('a charger is varied up to the limit of its set', () => {
  const { varies, setLimitW, sizes } = chargerSizes(yearOf(ac, 10), () => yearOf(ac, 10))!;
  expect([varies, setLimitW, sizes[2]!.powerW]).toEqual(['charger', 2700, 1000]);
  expect(chargerSizes(yearOf(undefined, 0), () => yearOf(ac, 10))).toBeNull();
});

test('the design itself is one of the sizes, and is not run again', () => {
  const large = { ...ac, output: { ...ac.output, charger: { power: 6000, efficiency: 0.9 } } };
  const asked: string[] = [];
  const { sizes } = chargerSizes(yearOf(large, 10), (id) => {
    asked.push(id);
    return yearOf(large, 10);
  })!;
  expect(sizes.map(({ times }) => times)).toEqual([0.5, 0.75, 1]);
  expect(asked).toEqual(['charger x 0.5', 'charger x 0.75']);
});

test('enough is the smallest size above which no larger one runs a tenth less', () => {
  // Nine tenths of 50 h are 45, which none of the larger ones reaches; of 60 h they are 54.
  expect(sizesOf(falling).enoughW).toBe(4500);
  // A tenth less is less: 45 of 50.
  expect(sizesOf({ ...falling, '4': 45 }).enoughW).toBe(6000);
  expect(sizesOf({ ...falling, '3': 40, '4': 30 }).enoughW).toBeNull();
  // A middle size that runs a tenth less counts as the largest does.
  const dip = { '0.5': 50, '0.75': 49, '1': 44, '1.5': 46, '2': 46, '3': 46, '4': 46 };
  expect(sizesOf(dip).enoughW).toBe(3000);
});
