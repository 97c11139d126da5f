import { hoursPerYear } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import type { DesignOutcome } from '../outcome.js';
import type { YearFigures } from '../year-figures.js';
import { loadTrials, loadWeights } from './load-weights.js';

const item = (name: string, bus: 'ac' | 'dc', kWh: number, ofMonths: readonly [january: number, others: number]) => ({
  name,
  bus,
  energyWhYear: 1000 * kWh,
  standbyWhYear: 100 * kWh,
  monthsWh: Float64Array.from({ length: 12 }, (_, m) => ofMonths[m === 0 ? 0 : 1]),
});
const items = [
  item('freezer', 'ac', 300, [10, 30]),
  item('radio', 'dc', 50, [20, 1]),
  item('party', 'ac', 5, [0, 5]),
  item('table', 'ac', 40, [30, 1]),
  item('table', 'dc', 60, [40, 1]),
];
const site = {
  name: 'Otter Bend',
  loads: [{ name: 'freezer' }, { name: 'radio' }],
  events: [{ name: 'party' }],
  measuredLoad: { file: 'load.csv' },
};

function outcome(hours: readonly number[], of: object = site, its: readonly object[] = items): DesignOutcome {
  const own = {
    site: of,
    load: { items: its },
    summary: { darkSeason: { month: 1 } },
    ledger: { lowestStateOfCharge: new Float64Array(hoursPerYear).fill(0.5) },
  } as unknown as YearResult;
  return {
    own,
    common: hours.map((generatorHours) => ({ generatorHours, starts: 0, fuelLitres: 0, darkKWh: 0 }) as YearFigures),
  };
}

test('each load, event and measured table is left out by itself', () => {
  expect(loadTrials(outcome([1]).own).map((trial) => trial.site)).toEqual([
    { ...site, loads: [{ name: 'radio' }] },
    { ...site, loads: [{ name: 'freezer' }] },
    { ...site, events: [] },
    { name: site.name, loads: site.loads, events: site.events },
  ]);
});

test('a measured load is one to leave out only where there is a table of it', () => {
  const { measuredLoad, ...plain } = site;
  expect(loadTrials(outcome([1], plain, items.slice(0, 3)).own)).toHaveLength(3);
  expect(loadTrials(outcome([1], site, items.slice(0, 3)).own)).toHaveLength(3);
});

test('loads are told heaviest first, with their energy and their share of the dark month', () => {
  // Without the freezer 30 h, without the radio 38 or so, without party or table 40.
  const without = [
    [30, 30, 30],
    [38, 38, 38],
    [40, 40, 40],
    [36, 36, 36],
  ];
  const weights = loadWeights(outcome([40, 40, 40]), (id) => outcome(without[Number(id.replace('load ', ''))]!));
  expect(weights.map(({ name, kind, bus, weight }) => [name, kind, bus, weight.generatorHours.mean])).toEqual([
    ['freezer', 'appliance', 'ac', 10],
    ['table', 'measured', 'both', 4],
    ['radio', 'appliance', 'dc', 2],
    ['party', 'event', 'ac', 0],
  ]);
  expect(weights.map(({ kWhYear, standbyKWhYear }) => [kWhYear, standbyKWhYear])).toEqual([
    [300, 30],
    [100, 10],
    [50, 5],
    [5, 0.5],
  ]);
  // In January 10, 70, 20 and 0 of 100 Wh.
  expect(weights.map(({ darkMonthShare }) => darkMonthShare)).toEqual([0.1, 0.7, 0.2, 0]);
  expect(weights.map(({ tiedWith }) => tiedWith)).toEqual([[], [], [], []]);
});

test('a dark month without any load is shared by none', () => {
  const idle = [item('pump', 'ac', 5, [0, 5])];
  const summer = { name: 'Otter Bend', loads: [{ name: 'pump' }], events: [] };
  const [pump] = loadWeights(outcome([4, 4], summer, idle), () => outcome([3, 3]));
  expect(pump!.darkMonthShare).toBe(0);
});
