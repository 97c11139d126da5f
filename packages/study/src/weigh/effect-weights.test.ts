import { hoursPerYear, monthSpan } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import type { DesignOutcome } from '../outcome.js';
import type { YearFigures } from '../year-figures.js';
import { effectTrials, effectWeights, presentEffects } from './effect-weights.js';

/** A design with trees, dirt and a bank that is kept warm already, whose engine runs in January. */
const site = {
  name: 'Otter Bend',
  skyline: [{ from: 70, to: 125 }],
  snow: { cover: 'layer', days: [] },
  arrays: [
    {
      losses: { glass: false, soiling: 0.02, mismatch: 0, age: 0 },
      mount: { kind: 'fixed' },
      controller: { kind: 'maximum-power', efficiency: 1, nightDraw: 0 },
    },
  ],
  bank: {
    cabinet: { insulation: 0, ventilation: 0, heatedBy: { kind: 'room', temperature: 25, coupling: 1e5 } },
  },
  loads: [],
} as unknown as Site;

function outcome(hours: readonly number[], offeredWh = 100, snow: Float64Array | null = null): DesignOutcome {
  const hourly = (value: number) => new Float64Array(hoursPerYear).fill(value);
  const months = Array.from({ length: 12 }, (_, m) => ({ hours: m === 0 ? 5 : 0 }));
  const own = {
    site,
    arrays: [{ snowShare: snow }],
    ledger: { arrayAvailableWh: hourly(offeredWh), darkWh: hourly(0), lowestStateOfCharge: hourly(0.5) },
    summary: { darkSeason: { month: 1 }, generator: { months } },
  } as unknown as YearResult;
  return {
    own,
    common: hours.map((generatorHours) => ({ generatorHours, starts: 0, fuelLitres: 0, darkKWh: 0 }) as YearFigures),
  };
}

test('the effects of a design are those it has anything of, those of snow where snow is known', () => {
  const known = new Float64Array(1);
  expect(presentEffects(outcome([1]).own).map(({ name }) => name)).toEqual(['skyline', 'soiling']);
  expect(presentEffects(outcome([1], 100, known).own).map(({ name }) => name)).toEqual([
    'skyline',
    'snow on the array',
    'snow left lying',
    'soiling',
  ]);
});

test('snow that is known of one array is enough', () => {
  const { own } = outcome([1]);
  const two = { ...own, arrays: [...own.arrays, { snowShare: new Float64Array(1) }] } as YearResult;
  expect(presentEffects(two).map(({ name }) => name)).toContain('snow on the array');
});

test('each effect is left out by itself', () => {
  const [trees, dirt] = effectTrials(outcome([1]).own);
  expect(trees!.site).toEqual({ ...site, skyline: [] });
  expect(dirt!.site.arrays[0]!.losses.soiling).toBe(0);
  expect(dirt!.site.skyline).toEqual(site.skyline);
});

test('effects are told heaviest first, with the energy that they take in the months in which the engine runs', () => {
  const base = outcome([40, 41, 40]);
  const [trees, dirt] = effectTrials(base.own);
  const years = new Map([
    [trees!.id, outcome([38, 39, 38], 110)],
    [dirt!.id, outcome([30, 31, 30], 150)],
  ]);
  const weights = effectWeights(base, (id) => years.get(id)!);
  const january = monthSpan(0).toHour;
  expect(january).toBe(744);
  // 744 h of 50 and of 10 Wh more.
  expect(
    weights.map(({ name, meaning, arrayKWh, weight }) => [name, meaning, arrayKWh, weight.generatorHours.mean]),
  ).toEqual([
    ['soiling', 'always clean', expect.closeTo(37.2, 9), 10],
    ['skyline', 'clear view all round', expect.closeTo(7.44, 9), 2],
  ]);
  expect(weights.map(({ tiedWith }) => tiedWith)).toEqual([[], []]);
});
