import { join } from 'node:path';
import { readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import type { CommonAnswer } from '../common/common-answer.js';
import { costOfYears, costsOfDesigns } from './design-costs.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const costs = readCosts(site)!;
const used = (hours: number, fuelLitres: number) => ({ hours, fuelLitres });

// Fuel at 1.55 a litre and service at 0.4 an hour: 50 h with 60 L are 93 + 20, 30 h with 40 L 62 + 12.
test('each year of use has its own fuel and service', () => {
  const [one, other] = costOfYears(site.base, [used(50, 60), used(30, 40)], costs, 20);
  expect([one!.runningPerYear, other!.runningPerYear]).toEqual([expect.closeTo(113, 9), expect.closeTo(74, 9)]);
});

const answer = (...years: { hours: number; fuelLitres: number }[][]) =>
  ({
    designs: years.map((of) => ({
      hoursOfYears: of.map(({ hours }) => hours),
      litresOfYears: of.map(({ fuelLitres }) => fuelLitres),
    })),
  }) as unknown as CommonAnswer;

test('a design costs the mean of its years, and the first is the base of the others', () => {
  const designs = ['base', 'thirsty'].map((name) => ({ name, site: site.base, bankYears: 20 }));
  const two = answer([used(50, 60), used(30, 40)], [used(50, 160), used(30, 140)]);
  const [base, thirsty] = costsOfDesigns(designs, two, costs);
  expect([base!.name, base!.againstBase]).toEqual(['base', null]);
  expect(base!.cost.runningPerYear).toBeCloseTo((113 + 74) / 2, 9);
  // 100 L more in every year are 155 a year, for 20 years at 3 %: (1 - 1.03^-20) / 0.03 = 14.8775 times as much.
  expect(thirsty!.againstBase!.difference.mean).toBeCloseTo(155 * 14.8775, 1);
  expect(thirsty!.againstBase).toMatchObject({ here: [], there: [], difference: { verdict: 'more' } });
});
