import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Appliance } from './appliance.js';
import type { LoadContext } from './driver.js';
import type { LoadEvent } from './load-event.js';
import { loadYear } from './load-year.js';

const context: LoadContext = {
  airC: Float64Array.from({ length: 8760 }, (_, h) => 5 - 18 * Math.cos((2 * Math.PI * (h - 400)) / 8760)),
  upShare: Float64Array.from({ length: 8760 }, (_, h) => (h % 24 >= 8 && h % 24 < 16 ? 1 : h % 24 === 7 ? 0.5 : 0)),
  firstWeekday: 1,
  roomC: new Float64Array(8760).fill(20),
  dullSpellDay: 350,
};
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
const only = (appliance: Appliance) => loadYear([appliance], [], context);

test('a freezer of 90 W that runs 35 % of the time uses 0.756 kWh a day', () => {
  const { acW, items } = only({ name: 'freezer', powerW: 90, runs: 0.35, bus: 'ac' });
  expect(acW[4000]).toBeCloseTo(31.5, 12);
  expect(items[0]!.energyWhYear).toBeCloseTo(756 * 365, 6);
  expect(items[0]!.monthsWh[11]!).toBeCloseTo(756 * 31, 6);
});

test('minutes a day are met to the watt-hour, wherever the allowed hours lie', () => {
  const pump = { name: 'pump', powerW: 600, runs: { minutesPerDay: 20 }, bus: 'dc' } as const;
  expect(only(pump).items[0]!.energyWhYear).toBeCloseTo(200 * 365, 6);
  expect(only({ ...pump, hours: [[22.5, 2.25]] }).items[0]!.energyWhYear).toBeCloseTo(200 * 365, 6);
  expect(only({ ...pump, days: 'weekends' }).items[0]!.energyWhYear).toBeCloseTo(200 * 104, 6);
});

test('standby is drawn while the appliance does not run, and listed apart', () => {
  const { items } = only({ name: 'set', powerW: 60, hours: [[18, 22]], standbyW: 3, bus: 'ac' });
  expect(items[0]!.standbyWhYear).toBeCloseTo(3 * 20 * 365, 6);
  expect(items[0]!.energyWhYear).toBeCloseTo((60 * 4 + 3 * 20) * 365, 6);
});

test('lights driven by daylight burn in waking hours while the sun is down', () => {
  const { dcW } = only({ name: 'lights', powerW: 40, hours: [[6, 22]], bus: 'dc', drivenBy: { kind: 'daylight' } });
  expect(Array.from(dcW.subarray(0, 24), Math.round)).toEqual([
    0, 0, 0, 0, 0, 0, 40, 20, 0, 0, 0, 0, 0, 0, 0, 0, 40, 40, 40, 40, 40, 40, 0, 0,
  ]);
});

test('a heating pump runs with the cold: none above its limit, half way between, all the time below', () => {
  const airC = new Float64Array(8760).fill(20);
  airC[1] = -15;
  airC[2] = -40;
  airC[3] = 0;
  const drivenBy = { kind: 'outdoor', belowC: 15, fullAtC: -15 } as const;
  const { dcW } = loadYear([{ name: 'pump', powerW: 50, bus: 'dc', drivenBy }], [], { ...context, airC });
  expect([dcW[0], dcW[1], dcW[2], dcW[3]]).toEqual([0, 50, 50, 25]);
  const switched = { kind: 'outdoor', belowC: 15 } as const;
  const { dcW: onOff } = loadYear([{ name: 'pump', powerW: 50, bus: 'dc', drivenBy: switched }], [], {
    ...context,
    airC,
  });
  expect([onOff[0], onOff[1], onOff[3]]).toEqual([0, 50, 50]);
});

test('a refrigerator runs longer in a warm room, and never more than all the time', () => {
  const refrigerator: Appliance = {
    name: 'refrigerator',
    powerW: 100,
    runs: 0.3,
    bus: 'ac',
    drivenBy: { kind: 'room', referenceC: 20, perK: 0.05 },
  };
  const at = (roomC: number) =>
    loadYear([refrigerator], [], { ...context, roomC: new Float64Array(8760).fill(roomC) }).acW[0]!;
  expect(at(20)).toBeCloseTo(30, 12);
  expect(at(30)).toBeCloseTo(45, 12);
  expect(at(79)).toBe(100);
  expect(at(-5)).toBe(0);
  const porch = { kind: 'outdoor', aboveOutdoorK: 4, atLeastC: 12 } as const;
  const { acW } = only({ ...refrigerator, drivenBy: { kind: 'room', referenceC: 20, perK: 0.05, room: porch } });
  expect(acW[400]).toBeCloseTo(30 * (1 - 0.05 * 8), 9);
});

test('guests multiply the running time in their weeks, an empty house ends it', () => {
  const periods = [
    { fromDay: 355, toDay: 2, times: 2 },
    { fromDay: 180, toDay: 186, times: 0 },
  ];
  const { acW } = only({ name: 'kitchen', powerW: 100, runs: 0.2, bus: 'ac', drivenBy: { kind: 'guests', periods } });
  expect([acW[0], acW[24 * 3], acW[24 * 183], acW[24 * 360]]).toEqual([40, 20, 0, 40]);
});

describe('starting loads', () => {
  test('the largest start stands on top of the mean load of its hour', () => {
    const { largestSurge, largestSurgeW } = loadYear(
      [
        { name: 'well pump', powerW: 800, runs: 0.25, hours: [[7, 8]], surge: { factor: 4 }, bus: 'ac' },
        { name: 'saw', powerW: 1000, runs: 0.1, hours: [[14, 15]], surge: { powerW: 2500 }, bus: 'ac' },
        { name: 'router', powerW: 10, bus: 'ac' },
        { name: 'winch', powerW: 5000, bus: 'dc', surge: { factor: 3 } },
      ],
      [],
      context,
    );
    expect(largestSurge).toEqual({ powerW: 3210, hour: 7, name: 'well pump' });
    expect(largestSurgeW).toBe(3210);
  });

  test('what may run together counts in full, however short it runs', () => {
    const { coincidentAcW } = loadYear(
      [
        { name: 'kettle', powerW: 2000, runs: { minutesPerDay: 6 }, hours: [[7, 9]], bus: 'ac' },
        { name: 'toaster', powerW: 900, runs: { minutesPerDay: 6 }, hours: [[8, 9]], bus: 'ac' },
        { name: 'iron', powerW: 2500, runs: 0.1, hours: [[18, 19]], bus: 'ac' },
      ],
      [],
      context,
    );
    expect(coincidentAcW).toBe(2900);
  });

  test('without AC appliances there is none', () => {
    expect(loadYear([], [], context).largestSurge).toBeNull();
  });
});

const hour = fc.integer({ min: 0, max: 96 }).map((quarter) => quarter / 4);
const appliance: fc.Arbitrary<Appliance> = fc.record({
  name: fc.constant('thing'),
  powerW: fc.integer({ min: 0, max: 5_000_000 }).map((mW) => mW / 1000),
  count: fc.integer({ min: 0, max: 5 }),
  bus: fc.constantFrom('ac' as const, 'dc' as const),
  runs: fc.integer({ min: 0, max: 1000 }).map((part) => part / 1000),
  hours: fc
    .tuple(hour, hour)
    .filter(([from, to]) => from !== to && Math.abs(from - to) <= 24)
    .map((w) => [w]),
  days: fc.constantFrom('all' as const, 'weekdays' as const, 'weekends' as const),
  standbyW: fc.integer({ min: 0, max: 20_000 }).map((mW) => mW / 1000),
  season: fc
    .record({ fromDay: fc.integer({ min: 0, max: 364 }), toDay: fc.integer({ min: 0, max: 364 }) })
    .map((s) => [s]),
});
const event: fc.Arbitrary<LoadEvent> = fc.record({
  name: fc.constant('party'),
  day: fc.integer({ min: 0, max: 364 }),
  startHour: hour,
  hours: fc.integer({ min: 1, max: 600 }).map((tenths) => tenths / 10),
  uses: fc.record({ energyWh: fc.integer({ min: 0, max: 100_000 }) }),
  bus: fc.constantFrom('ac' as const, 'dc' as const),
  daysInRow: fc.integer({ min: 1, max: 9 }),
});

test('the items add up to the hourly loads, whatever they are', () => {
  fc.assert(
    fc.property(fc.array(appliance, { maxLength: 5 }), fc.array(event, { maxLength: 3 }), (appliances, events) => {
      const year = loadYear(appliances, events, context);
      for (const bus of ['ac', 'dc'] as const) {
        const hourly = sum(bus === 'ac' ? year.acW : year.dcW);
        const items = year.items
          .filter((item) => item.bus === bus)
          .reduce((total, item) => total + item.energyWhYear, 0);
        expect(Math.abs(items - hourly)).toBeLessThanOrEqual(1e-11 * hourly);
      }
      expect(year.acW.every(Number.isFinite)).toBe(true);
    }),
    { numRuns: 60 },
  );
});

test('events bring exactly their energy, also past the end of the year', () => {
  fc.assert(
    fc.property(event, (party) => {
      const { items } = loadYear([], [party], context);
      const expected = 'energyWh' in party.uses ? party.uses.energyWh * party.daysInRow! : Number.NaN;
      expect(Math.abs(items[0]!.energyWhYear - expected)).toBeLessThanOrEqual(1e-9 * expected);
    }),
    { numRuns: 60 },
  );
});

test('more running share never means less energy in any hour', () => {
  fc.assert(
    fc.property(appliance, fc.integer({ min: 0, max: 1000 }), (base, part) => {
      const other = part / 1000;
      const [low, high] = [Math.min(other, base.runs as number), Math.max(other, base.runs as number)];
      // With standby above the running power, less running would rightly use more.
      const standbyW = Math.min(base.standbyW!, base.powerW);
      const less = loadYear([{ ...base, standbyW, runs: low }], [], context);
      const more = loadYear([{ ...base, standbyW, runs: high }], [], context);
      for (let h = 0; h < 8760; h++) {
        const rise = more.acW[h]! + more.dcW[h]! - less.acW[h]! - less.dcW[h]!;
        if (rise < -1e-9) throw new Error(`hour ${h} lost ${-rise} W`);
      }
    }),
    { numRuns: 40 },
  );
});

describe('what is refused, by name', () => {
  test.each<[string, Partial<Appliance>, string]>([
    ['a running share in per cent', { runs: 35 }, 'oven: running share must be 0 to 1, got 35'],
    [
      'more minutes than allowed hours hold',
      { runs: { minutesPerDay: 90 }, hours: [[6, 7]] },
      'oven: minutesPerDay must be 0 to 60, got 90',
    ],
    [
      'overlapping hours',
      {
        hours: [
          [20, 2],
          [1, 3],
        ],
      },
      'oven: hours overlap between 1:00 and 2:00',
    ],
    ['an empty window', { hours: [[6, 6]] }, 'a whole day is [0, 24]'],
    ['an eighth weekday', { days: [7] }, 'days must be 0 (Sunday) to 6, got 7'],
    ['a month zero', { season: { months: [0] } }, 'oven: month must be 1 to 12, got 0'],
    ['a day past the end', { season: [{ fromDay: 0, toDay: 365 }] }, 'toDay must be 0 to 364, got 365'],
    ['a start below running power', { surge: { powerW: 10 } }, 'surge powerW'],
    ['not a number', { powerW: Number.NaN }, 'oven: powerW must be 0 to 1000000000, got NaN'],
    ['full cold warmer than its limit', { drivenBy: { kind: 'outdoor', belowC: 5, fullAtC: 9 } }, 'fullAtC'],
  ])('%s', (_, change, message) => {
    expect(() => only({ name: 'oven', powerW: 100, bus: 'ac', ...change })).toThrow(message);
  });

  test('an appliance driven by a room nobody has described', () => {
    const { roomC: _, ...bare } = context;
    const drivenBy = { kind: 'room', referenceC: 20, perK: 0.05 } as const;
    expect(() => loadYear([{ name: 'fridge', powerW: 9, bus: 'ac', drivenBy }], [], bare)).toThrow(TypeError);
  });
});
