import { changedDesign, loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { always, weatherOf } from '../facts/year.fixture.js';
import { prepareLoads } from './prepare-loads.js';
import { prepareOutdoors } from './prepare-outdoors.js';
import { PreparedCache } from './prepared-cache.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
const lamp = { name: 'lamp', power: '100 W', bus: 'dc' };

/** The loads of a site that has these only. */
function loadsOf(loads: object[], changes: Record<string, unknown> = {}, weather = weatherOf(), measured = null) {
  const design = changedDesign(site, { loads, events: [], ...changes });
  const cache = new PreparedCache();
  return prepareLoads(design, { weather, measured }, prepareOutdoors(design, weather, cache), cache);
}
/** Watts of one load at hours of the year. */
const dcAt = (load: object, hours: number[], weather = weatherOf()) => {
  const { dcW } = loadsOf([{ ...lamp, ...load }], {}, weather).load;
  return hours.map((h) => Number(dcW[h]!.toFixed(6)));
};
const noon = (day: number) => day * 24 + 12;

test('a load draws its power, times how many there are, at all hours of its bus', () => {
  expect(dcAt({}, [0, 8759])).toEqual([100, 100]);
  expect(dcAt({ count: 3, standby: '5 W', runs: '50 %' }, [12])).toEqual([3 * (50 + 2.5)]);
  const { load } = loadsOf([{ ...lamp, bus: 'ac' }]);
  expect([load.acW[5], load.dcW[5]]).toEqual([100, 0]);
});

test('what runs so long a day is spread over its hours', () => {
  expect(dcAt({ perDay: '6 h' }, [3])).toEqual([25]);
  expect(dcAt({ perDay: '1 h', when: { hours: [10, 12] } }, [9, 10, 11, 12])).toEqual([0, 50, 50, 0]);
});

// 1 January 2025 was a Wednesday.
test('days, seasons and times away are those that are written', () => {
  expect(dcAt({ when: { days: 'weekends' } }, [2, 3, 4, 5].map(noon))).toEqual([0, 100, 100, 0]);
  const season = { from: '02-01', to: '02-10' };
  expect(dcAt({ when: { season } }, [30, 31, 40, 41].map(noon))).toEqual([0, 100, 100, 0]);
  expect(dcAt({ off: season }, [30, 31, 40, 41].map(noon))).toEqual([100, 0, 0, 100]);
});

test('cold, darkness, warm rooms and guests drive a load', () => {
  const air = (airC: number) => weatherOf({ airC: always(airC) });
  const heating = { when: { outdoorBelow: '10 degC', fullAt: '-10 degC' } };
  expect([10, 0, -10].map((airC) => dcAt(heating, [12], air(airC))[0])).toEqual([0, 50, 100]);
  const switched = { when: { outdoorBelow: '10 degC' } };
  expect([10, 9].map((airC) => dcAt(switched, [12], air(airC))[0])).toEqual([0, 100]);
  expect(dcAt({ when: { dark: true } }, [0, 12])).toEqual([100, 0]);
  // 3 % for each of 10 K above 20 degC; the rooms are warmer than outdoors by what the site file says.
  const cooled = { runs: '50 %', when: { roomAt: '20 degC' } };
  const { dcW } = loadsOf([{ ...lamp, ...cooled }], { rooms: { above: '4 K' } }, air(26)).load;
  expect(dcW[12]).toBeCloseTo(50 * 1.3, 9);
  const guests = [{ from: '07-01', to: '07-10', times: 1.5 }];
  expect(dcAt({ runs: '50 %', when: { guests } }, [180, 181].map(noon))).toEqual([50, 75]);
});

test('the largest start is that of the site file, never below the running power', () => {
  const surgeOf = (surge: string | undefined) =>
    loadsOf([{ ...lamp, bus: 'ac', ...(surge && { surge }) }]).load.largestSurge?.powerW;
  expect(surgeOf('900 W')).toBe(900);
  expect(surgeOf('50 W')).toBe(100);
  expect(surgeOf(undefined)).toBe(100);
});

test('an event falls on its day or into the dullest spell, with a power or with an energy', () => {
  const event = { name: 'party', on: '02-01', at: 18, lasts: '2 h', bus: 'dc' };
  const at = (changes: object, day: number, weather = weatherOf()) => {
    const { dcW } = loadsOf([], { events: [{ ...event, ...changes }] }, weather).load;
    return [17, 18, 19, 20].map((hour) => dcW[day * 24 + hour]);
  };
  expect(at({ power: '300 W' }, 31)).toEqual([0, 300, 300, 0]);
  expect(at({ energy: '1 kWh' }, 31)).toEqual([0, 500, 500, 0]);
  expect(at({ energy: '1 kWh', days: 3 }, 33)).toEqual([0, 500, 500, 0]);
  expect(at({ energy: '1 kWh', days: 3, off: { from: '02-03', to: '02-03' } }, 33)).toEqual([0, 0, 0, 0]);
  const ghiWm2 = always(100).map((w, h) => (h >= 200 * 24 && h < 203 * 24 ? 0 : w));
  expect(at({ on: 'dullest spell', power: '300 W' }, 200, weatherOf({ ghiWm2 }))).toEqual([0, 300, 300, 0]);
});

// Its best efficiency at a third of its rating: 1000 W of 3 kW come from 1000 W / 0.9.
test('inverter and converter draw what their loads and their losses take', () => {
  const inverter = { power: '3 kW', idle: '30 W', efficiency: '90 %' };
  const made = loadsOf([{ ...lamp, name: 'saw', bus: 'ac', power: '1 kW' }, lamp], {
    inverter,
    converter: { efficiency: '80 %', idle: '5 W' },
  });
  expect(made.inverterInputW[0]).toBeCloseTo(1000 / 0.9, 6);
  expect(made.converterInputW[0]).toBeCloseTo(100 / 0.8 + 5, 6);
  expect(made.inverter).toMatchObject({ powerW: 3000, surgeW: 3000, idleW: 30 });
  expect(made.inverter).not.toHaveProperty('search');
  const searching = { ...inverter, surge: '6 kW', search: { idle: '2 W', below: '20 W' } };
  const asleep = loadsOf([lamp], { inverter: searching });
  expect(asleep.inverter).toMatchObject({ surgeW: 6000, search: { idleW: 2, belowW: 20 } });
  expect(asleep.inverterInputW[0]).toBe(2);
});

test('without inverter and converter AC draws nothing from the bus, and DC what it uses', () => {
  const { inverter: _, ...without } = changedDesign(site, {
    loads: [{ ...lamp, name: 'saw', bus: 'ac' }, lamp],
    events: [],
  });
  const cache = new PreparedCache();
  const weather = weatherOf();
  const made = prepareLoads(
    without as never,
    { weather, measured: null },
    prepareOutdoors(site.base, weather, cache),
    cache,
  );
  expect([made.inverter, made.inverterInputW[0], made.load.acW[0]]).toEqual([null, 0, 100]);
  expect(made.converterInputW).toBe(made.load.dcW);
});

test('a measured load comes on top', () => {
  const measured = { name: 'measured', acW: always(40), dcW: always(7) } as never;
  const { load } = loadsOf([lamp], {}, weatherOf(), measured);
  expect([load.acW[3], load.dcW[3]]).toEqual([40, 107]);
});
