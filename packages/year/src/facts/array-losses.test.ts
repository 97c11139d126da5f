import { monthStartHour } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { losslessController } from '../loop/plant.fixture.js';
import type { PreparedArray } from '../prepare/prepare-array.js';
import { arrayLosses } from './array-losses.js';
import { always, quietYear } from './year.fixture.js';

/** Hours of January in which something happens, and one of July. */
const hour = 12;
const inJuly = monthStartHour[6]! + 12;

/** An array that offers so many watts in the two hours, within a limit at 24 V. */
function arrayOf(name: string, offersW: [number, number], maxCurrentA: number, efficiency = [1]): PreparedArray {
  const offerW = always(0);
  offerW[hour] = offersW[0];
  offerW[inJuly] = offersW[1];
  const zero = always(0);
  const made = losslessController(offerW);
  const dc = { ...made.dc, litWm2: zero };
  const loadFraction = Float64Array.from(efficiency, (_, k) => k);
  const input = { inSeries: 1, strings: 1, cableOhm: 0, effectiveWm2: zero, cellC: zero };
  return {
    name,
    ratedW: 300,
    plane: {
      planeWm2: zero,
      beamWm2: zero,
      skyWm2: zero,
      groundWm2: zero,
      skylineLossWm2: zero,
      glassLossWm2: zero,
      effectiveWm2: zero,
    },
    snowShare: null,
    input: { ...input, parameters: flatModule },
    dc,
    controller: { ...made, dc, loadFraction, efficiency: Float64Array.from(efficiency), ratedA: 1e6 },
    maxCurrentA,
    ownUseW: zero,
  };
}

const flatModule = {
  lightA: 10,
  saturationA: 1e-9,
  idealityV: 1.6,
  seriesOhm: 0.2,
  shuntS: 0.001,
  lightAPerK: 0,
  gapEv: 1.12,
  gapFallPerK: 0,
  ratedW: 300,
};

type Posted = Partial<Record<'arrayAvailableWh' | 'clippedWh' | 'spareWh' | 'throttledWh', number>>;

/** What is lost behind the array in a month, Wh by name without what is zero, and what is left. */
function lossesOf(arrays: PreparedArray[], posted: Posted, at = hour) {
  const year = { ...quietYear(), arrays };
  for (const [column, wh] of Object.entries(posted)) year.ledger[column as keyof Posted][at] = wh;
  const month = at === hour ? 0 : 6;
  return arrayLosses(year as unknown as Parameters<typeof arrayLosses>[0]).map(({ name, chain }) => {
    const behind = chain.losses.slice(chain.losses.findIndex(({ name: of }) => of === 'cable') + 1);
    const inWh = behind.map(({ name: of, kWh }) => [of, Number((kWh[month]! * 1000).toFixed(6))] as const);
    return {
      name,
      ...Object.fromEntries(inWh.filter(([, wh]) => wh !== 0)),
      rest: Math.round(chain.restKWh[month]! * 1e9) / 1e6,
    };
  });
}

// 20 A at 24 V are 480 W: 120 W of the first are above its limit, three quarters of them wanted. What is left, 480 and 200 W, shares
// what the full bank refuses: 170 as 120 and 50.
test('what is above the limit is lost by the array that is above, what the bank refuses by all as they offer', () => {
  const arrays = [arrayOf('east', [600, 0], 20), arrayOf('west', [200, 0], 1000)];
  expect(lossesOf(arrays, { arrayAvailableWh: 680, clippedWh: 90, spareWh: 30, throttledWh: 170 })).toEqual([
    { name: 'east', 'current limit': 90, 'above the limit, bank full': 30, throttled: 120, rest: 360 },
    { name: 'west', throttled: 50, rest: 150 },
  ]);
});

test('a limit that was reached for a part of the hour takes of each by what it offers', () => {
  const arrays = [arrayOf('east', [0, 300], 20), arrayOf('west', [0, 100], 1000)];
  expect(lossesOf(arrays, { arrayAvailableWh: 352, clippedWh: 40, spareWh: 8 }, inJuly)).toEqual([
    { name: 'east', 'current limit': 30, 'above the limit, bank full': 6, rest: 264 },
    { name: 'west', 'current limit': 10, 'above the limit, bank full': 2, rest: 88 },
  ]);
});

// 400 W at the mean voltage of the hour were 380 Wh over it.
test('what the voltage within the hour takes is that of arrays whose offer follows it, or of all', () => {
  const alike = [arrayOf('east', [300, 0], 1000), arrayOf('west', [100, 0], 1000)];
  expect(lossesOf(alike, { arrayAvailableWh: 380 })).toEqual([
    { name: 'east', 'voltage in the hour': 15, rest: 285 },
    { name: 'west', 'voltage in the hour': 5, rest: 95 },
  ]);
  const curved = [arrayOf('east', [300, 0], 1000), arrayOf('west', [100, 0], 1000, [1, 1])];
  // The full bank refuses of 300 and 80 W, not of 100.
  expect(lossesOf(curved, { arrayAvailableWh: 380, throttledWh: 38 })).toEqual([
    { name: 'east', throttled: 30, rest: 270 },
    { name: 'west', 'voltage in the hour': 20, throttled: 8, rest: 72 },
  ]);
  // 24 V x 1 A of the array's own current where the bank holds it: only that it follows is asked here.
  const grid = { lowestV: 20, stepV: 10, steps: 1, currentA: always(0), rowOf: new Int32Array(8760).fill(-1) };
  const held = arrayOf('west', [100, 0], 1000);
  const direct = [alike[0]!, { ...held, controller: { ...held.controller, grid: grid as never } }];
  expect(lossesOf(direct, { arrayAvailableWh: 380 })[1]).toMatchObject({ 'voltage in the hour': 20 });
});

test('what came within an hour whose mean voltage offers nothing is divided evenly', () => {
  const arrays = [arrayOf('east', [0, 0], 1000), arrayOf('west', [0, 0], 1000)];
  expect(lossesOf(arrays, { arrayAvailableWh: 10 })).toEqual([
    { name: 'east', 'voltage in the hour': -5, rest: 5 },
    { name: 'west', 'voltage in the hour': -5, rest: 5 },
  ]);
});

test('a controller loses by its efficiency, and all while it sleeps', () => {
  const nine = arrayOf('south', [200, 0], 1000, [0.9]);
  expect(lossesOf([nine], { arrayAvailableWh: 180 })).toEqual([{ name: 'south', conversion: 20, rest: 180 }]);
  const asleep = { ...nine, controller: { ...nine.controller, awake: new Uint8Array(8760) } };
  expect(lossesOf([asleep], {})).toEqual([{ name: 'south', 'off the best voltage': 200, rest: 0 }]);
});
