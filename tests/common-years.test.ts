import { changedDesign, loadSite } from '@wintergap/site';
import { commonAnswer, type NamedSite, runDesigns, weighSite } from '@wintergap/study';
import { quantileSorted } from 'simple-statistics';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { pairedDifference, yearsMean } from '../packages/study/src/common/paired-difference.js';
import { quantileRange } from '../packages/study/src/outlook/quantile-range.js';
import { type Certainty, keepCertainty } from './validation/certainty.js';

const site = loadSite(new URL('../examples/kettle-pond.yaml', import.meta.url).pathname);
const designs: NamedSite[] = [
  { name: 'base', site: site.base },
  { name: 'a tenth of a watt', site: changedDesign(site, { 'loads.router and radio.power': '14.1 W' }) },
  { name: 'taller pole', site: site.variants.get('taller pole')! },
  { name: 'fixed', site: site.variants.get('fixed')! },
];

// As many years as the suite has time for; `npm run certainty` runs 500.
const count = Number(process.env.WINTERGAP_COMMON_YEARS ?? 50);
const found: Certainty[] = [];
const seeds = Math.floor(count / 25);
let hours: Record<string, number[]> = {};

beforeAll(async () => {
  const run = await runDesigns(designs, { years: count, workers: 1 });
  hours = Object.fromEntries(run.designs.map(({ name, years }) => [name, years.map((year) => year.generatorHours)]));
}, 3_600_000);

afterAll(() => {
  if (count >= 400) keepCertainty(found);
});

/** The years of one seed out of `seeds`: made years are independent, so any 25 of them are as good as a seed's own. */
const yearsOf = (name: string, seed: number) => hours[name]!.slice(seed * 25, seed * 25 + 25);

const answerOf = (names: readonly string[], seed: number) =>
  commonAnswer({
    weather: { count: 25, kind: 'resampled', weather: { kind: 'resampled', from: 1, years: 25, seed } } as never,
    designs: names.map((name) => ({
      name,
      years: yearsOf(name, seed).map((generatorHours) => ({ ...figures, generatorHours })),
    })),
  });
const figures = {
  weather: '',
  generatorMonthHours: new Array<number>(12).fill(0),
  generatorWeekHours: new Array<number>(52).fill(0),
  starts: 0,
  fuelLitres: 0,
  darkHours: 0,
  darkKWh: 0,
  loadKWh: 1000,
  throttledKWh: 0,
  lowestStateOfCharge: 0.5,
  autonomyDays: 3,
  ghiKWhPerM2: 1200,
};

test('two designs that differ by a tenth of a watt are a tie for every seed, and neither is praised', () => {
  for (let seed = 0; seed < seeds; seed++) {
    expect(answerOf(['base', 'a tenth of a watt'], seed).leaders).toEqual(['base', 'a tenth of a watt']);
  }
  found.push({
    what: 'designs 0.1 W of load apart, called a tie',
    stated: 'always',
    found: `${seeds} of ${seeds} seeds`,
  });
});

test("a taller pole's difference keeps its sign for every seed, and a fixed mount is never a leader", () => {
  for (let seed = 0; seed < seeds; seed++) {
    expect(pairedDifference(yearsOf('taller pole', seed), yearsOf('base', seed)).mean).toBeLessThan(0);
    expect(answerOf(['base', 'taller pole', 'fixed'], seed).leaders).not.toContain('fixed');
  }
  found.push({ what: 'the taller pole needs less engine', stated: 'always', found: `${seeds} of ${seeds} seeds` });
});

test('pairing designs on the same years cuts the error of their difference several times', () => {
  const paired = pairedDifference(hours['taller pole']!, hours.base!).standardError;
  const apart = Math.hypot(yearsMean(hours['taller pole']!).standardError, yearsMean(hours.base!).standardError);
  expect(apart / paired).toBeGreaterThan(4);
});

test('one in ten is never below the usual year', () => {
  for (const values of Object.values(hours)) {
    const sorted = [...values].sort((a, b) => a - b);
    expect(quantileSorted(sorted, 0.9)).toBeGreaterThanOrEqual(quantileSorted(sorted, 0.5));
  }
});

// Student (1908): the range at 90 % holds the true mean in 90 % of samples of normal values; engine hours are lumpy and
// skewed, so somewhat fewer or more are allowed. The mean of all years at hand stands for the true one.
test.runIf(count >= 400)('a range stated at 90 % holds what all years show in 85 to 95 % of draws', () => {
  const all = [...hours.base!].sort((a, b) => a - b);
  const base = (at: number[]) => at.map((year) => hours.base![year]!);
  const pole = (at: number[]) => at.map((year) => hours['taller pole']![year]!);
  const sorted = (at: number[]) => base(at).sort((a, b) => a - b);
  const ranges = [
    {
      what: 'mean engine hours of 25 years',
      years: 25,
      of: (at: number[]) => yearsMean(base(at)),
      is: yearsMean(all).mean,
    },
    {
      what: 'difference of the taller pole, of 25 years',
      years: 25,
      of: (at: number[]) => pairedDifference(pole(at), base(at)),
      is: pairedDifference(hours['taller pole']!, hours.base!).mean,
    },
    {
      what: 'usual year of an outlook of 40',
      years: 40,
      of: (at: number[]) => quantileRange(sorted(at), 0.5),
      is: quantileSorted(all, 0.5),
    },
    {
      what: 'one year in ten of an outlook of 40',
      years: 40,
      of: (at: number[]) => quantileRange(sorted(at), 0.9),
      is: quantileSorted(all, 0.9),
    },
  ];
  const draws = 200;
  for (const { what, years, of, is } of ranges) {
    let held = 0;
    for (let draw = 0; draw < draws; draw++) {
      const { low, high } = of(drawn(years, draw));
      if ((low ?? Number.NEGATIVE_INFINITY) <= is && is <= (high ?? Number.POSITIVE_INFINITY)) held++;
    }
    found.push({ what, stated: '9 in 10', found: `${held} of ${draws} draws from ${count} years` });
    expect(held / draws, what).toBeGreaterThanOrEqual(0.85);
    // Bounds of a quantile are values of the sample, and so a little wider than stated.
    expect(held / draws, what).toBeLessThanOrEqual(what.includes('outlook') ? 0.98 : 0.95);
  }
});

/** So many years of all, none twice within a draw: from a shifting start by strides that differ from draw to draw. */
const drawn = (years: number, draw: number) =>
  Array.from({ length: years }, (_, i) => (draw * 37 + i * (1 + 2 * (draw % 13)) * 7) % count);

/** Seeds and years of `weigh` that are held against one another. */
const weighed = count >= 400 ? { seeds: 6, years: 25 } : { seeds: 2, years: 6 };
test('no two loads or effects that the years tell apart stand the other way round under another seed', async () => {
  const heavier = new Set<string>();
  for (let seed = 1; seed <= weighed.seeds; seed++) {
    const { loads, effects } = await weighSite(site.base, { years: weighed.years, seed, workers: 1 });
    for (const list of [loads, effects]) {
      list.forEach(({ name, tiedWith }, i) => {
        for (const below of list.slice(i + 1))
          if (!tiedWith.includes(below.name)) heavier.add(`${name} > ${below.name}`);
      });
    }
  }
  const turned = [...heavier].filter((order) => heavier.has(order.split(' > ').toReversed().join(' > ')));
  expect(turned).toEqual([]);
  expect(heavier.size).toBeGreaterThan(20);
  found.push({
    what: `pairs of loads or effects that \`weigh\` tells apart by ${weighed.years} years, the other way round under another of ${weighed.seeds} seeds`,
    stated: 'seldom',
    found: `${turned.length} of ${heavier.size}`,
  });
}, 3_600_000);
