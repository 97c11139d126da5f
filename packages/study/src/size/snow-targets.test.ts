import type { Site } from '@wintergap/site';
import { expect, test } from 'vitest';
import type { YearFigures } from '../year-figures.js';
import type { SizeQuestion } from './section.js';
import { snowTargets } from './snow-targets.js';
import type { SizeTrial } from './trial.js';

const site = { snow: { cover: 'layer', days: [] }, arrays: [] } as unknown as Site;

test('targets are held against twelve years of either extreme of snow, all run anew', () => {
  const asked: [cover: string, before: number, years: number | undefined][] = [];
  const complete: SizeTrial['complete'] = (of, run, years) => {
    asked.push([of.snow.cover, run.length, years]);
    // 20 h without snow on the array, 20, 30 and 60 h with it.
    const hours = of.snow.cover === 'none' ? [20, 20, 20] : [20, 60, 30];
    return hours.map(
      (generatorHours) => ({ generatorHours, fuelLitres: 0, darkHours: 0, autonomyDays: 5 }) as YearFigures,
    );
  };
  const question = { judged: { kind: 'usual' }, targets: { generatorHours: 25 } } as unknown as SizeQuestion;
  const { none, full } = snowTargets(site, { complete } as SizeTrial, question);
  expect(asked.map(([, before, years]) => [before, years])).toEqual([
    [0, 12],
    [0, 12],
  ]);
  expect([none.figures.generatorHours, none.misses]).toEqual([20, []]);
  expect(full.misses).toEqual([{ figure: 'generatorHours', limit: 25, value: 30, by: 5 }]);
});
