import type { Site } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { carryBalance, converterInEnginePlace } from './converter-in-engine-place.js';

/** A year of a few hours, of which as much is there as a balance reads. */
function yearOf(hours: number, plant: object, ledger: object, load = { acKWh: 0, dcKWh: 0, darkKWh: 0 }): YearResult {
  const none = () => new Float64Array(hours);
  return {
    plant: {
      ...{ acW: none(), dcW: none(), inverterInputW: none(), converterInputW: none(), ownUseW: none() },
      ...{ inverterLimitW: 250, bank: { floor: 0.4 }, ...plant },
    },
    ledger: {
      ...{ throttledWh: none(), darkWh: none(), acServedWh: none(), dcServedWh: none(), generatorToBusWh: none() },
      ...ledger,
    },
    summary: { load },
  } as unknown as YearResult;
}
const of = (...values: number[]) => Float64Array.from(values);

test('what a store is asked for is what the engine gave and what dark load would have drawn on the DC bus', () => {
  const year = yearOf(
    5,
    {
      ...{ acW: of(100, 100, 0, 300, 100), dcW: of(30, 30, 30, 0, 30) },
      ...{ inverterInputW: of(120, 120, 8, 320, 120), converterInputW: of(33, 33, 33, 0, 33) },
    },
    {
      ...{ throttledWh: of(7, 0, 0, 0, 0), generatorToBusWh: of(50, 0, 0, 0, 11) },
      ...{ acServedWh: of(100, 40, 0, 0, 90), dcServedWh: of(30, 30, 10, 0, 25), darkWh: of(0, 60, 20, 300, 15) },
    },
  );
  const { surplusWh, demandWh, beyondWh } = carryBalance(year);
  // 60 of 100 W dark at 1.2 W drawn each; 20 of 30 W at 1.1; 250 W within the inverter at 320 / 300; then 10 AC and 5 DC.
  [50, 72, 22, (250 * 320) / 300, 11 + 12 + 5.5].forEach((wh, h) => {
    expect(demandWh[h]).toBeCloseTo(wh, 9);
  });
  expect([...surplusWh]).toEqual([7, 0, 0, 0, 0]);
  // Of 300 W the inverter gives 250.
  expect(beyondWh).toBeCloseTo(50, 9);
});

const { base } = inventedSite();
/** 100 W on the bus all along, 940 W in hour 300, in which something was asked for, and 500 W for a week in which not. */
const drawn = new Float64Array(1000).fill(100).fill(500, 600, 800).fill(940, 300, 301);
const third = drawn.map((watts) => watts / 3);
const asked = new Float64Array(1000).fill(5, 300, 301);
const asItIs = yearOf(
  1000,
  { inverterInputW: third, converterInputW: third, ownUseW: third },
  { generatorToBusWh: asked },
);

/** Powers tried and the one kept, when so much load stays dark at each of them, of 1000 kWh. */
function tried(...darkKWh: number[]) {
  const powers: number[] = [];
  const simulate = (site: Site): YearResult => {
    powers.push(site.generator!.output.power);
    const dark = darkKWh[powers.length - 1] ?? darkKWh.at(-1)!;
    return yearOf(1000, {}, {}, { acKWh: 600, dcKWh: 400, darkKWh: dark });
  };
  return { kept: converterInEnginePlace(base, asItIs, simulate).powerW, powers };
}

test('converter out carries the heaviest week in which help was asked, and no heavier one', () => {
  // 100 W and once 940 in 168 h are 105 W.
  const { kept, powers } = tried(0);
  expect(kept).toBeCloseTo(105, 9);
  expect(powers).toHaveLength(1);
  // The week may go over New Year, and a year that asks for nothing needs a watt.
  const late = new Float64Array(1000).fill(940, 990, 1000);
  const over = yearOf(1000, { ownUseW: late }, { generatorToBusWh: new Float64Array(1000).fill(5, 20, 21) });
  const simulate = () => yearOf(1000, {}, {});
  expect(converterInEnginePlace(base, over, simulate).powerW).toBeCloseTo(9400 / 168, 9);
  expect(converterInEnginePlace(base, yearOf(1000, { ownUseW: late }, {}), simulate).powerW).toBe(1);
});

test('converter out grows by quarters while a tenth less stays dark, and until next to nothing does', () => {
  const growing = tried(10, 8, 7.3);
  growing.powers.forEach((power, k) => {
    expect(power).toBeCloseTo(105 * 1.25 ** k, 6);
  });
  expect([growing.powers.length, growing.kept]).toEqual([3, growing.powers[1]]);
  expect(tried(10, 9, 8.9)).toMatchObject({ kept: expect.closeTo(105 * 1.25, 6) });
  // A millionth of 1000 kWh is none.
  expect(tried(10, 0.0009, 0).powers).toHaveLength(2);
  expect(tried(10, 0.0011, 0).powers).toHaveLength(3);
  const halving = Array.from({ length: 20 }, (_, k) => 1000 / 2 ** k);
  expect(tried(...halving).powers).toHaveLength(16);
});

test('load beyond the inverter does not make converter out grow', () => {
  const simulate = () =>
    yearOf(
      2,
      { acW: of(1000, 0), inverterInputW: of(1100, 0) },
      { acServedWh: of(250, 0), darkWh: of(750, 0) },
      { acKWh: 1, dcKWh: 0, darkKWh: 0.75 },
    );
  let years = 0;
  const counted = () => {
    years++;
    return simulate();
  };
  expect(converterInEnginePlace(base, asItIs, counted).beyondWh).toBe(750);
  expect(years).toBe(1);
});

test('converter out holds the bank where the engine would have started, unheard and at once', () => {
  const generatorOf = (start: object | undefined) => {
    let found: Site['generator'];
    const { generator, ...without } = base;
    const site = (start ? { ...base, generator: { ...generator!, start } } : without) as Site;
    converterInEnginePlace(site, asItIs, (design) => {
      found = design.generator;
      return yearOf(1000, {}, {});
    });
    return found!;
  };
  expect(generatorOf({ below: 0.45 })).toMatchObject({
    output: { bus: 'dc', efficiency: 1 },
    start: { below: 0.45, heldFor: 0, days: 'all', endsRun: false },
    stop: { above: expect.closeTo(0.48, 12), atBulkEnd: false },
    ...{ warmUp: 0, coolDown: 0, minimumLoad: 0, derate: false },
  });
  expect(generatorOf({ byHand: { below: 0.55 } }).start.below).toBe(0.55);
  expect(generatorOf({ beforeDullDay: { below: 0.65 } }).start.below).toBe(0.65);
  // Without a charge to go by, five points above the floor of 40 %.
  expect(generatorOf({ belowVoltage: 23 }).start.below).toBeCloseTo(0.45, 12);
  expect(generatorOf(undefined).start.below).toBeCloseTo(0.45, 12);
  // It stops short of full.
  expect(generatorOf({ below: 0.99 })).toMatchObject({
    start: { below: 0.94 },
    stop: { above: expect.closeTo(0.97, 12) },
  });
});
