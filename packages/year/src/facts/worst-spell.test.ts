import { dateOfDay, daysPerYear } from '@wintergap/ground';
import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { simulateSite } from '../simulate.js';
import { worstSpell } from './worst-spell.js';
import { always, quietYear, weatherOf } from './year.fixture.js';

const year = simulateSite(loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname).base);
const { ledger, weather, load } = year;

const sumOf = (column: Float64Array, first: number, days: number) => {
  let sum = 0;
  for (let i = 0; i < days; i++) {
    const from = ((first + i) % daysPerYear) * 24;
    for (let h = from; h < from + 24; h++) sum += column[h]!;
  }
  return sum;
};

test.each([1, 3, 14, 60])('no other %d days have less sun for the load', (days) => {
  const ratio = (first: number) =>
    sumOf(weather.ghiWm2, first, days) / (sumOf(load.acW, first, days) + sumOf(load.dcW, first, days));
  const least = Math.min(...Array.from({ length: daysPerYear }, (_, first) => ratio(first)));
  expect(ratio(worstSpell(year, days).firstDay)).toBeCloseTo(least, 12);
});

test('the days follow one another, and add up to the ledger', () => {
  const spell = worstSpell(year);
  const { firstDay, days } = spell;
  expect(days.map(({ date }) => date)).toEqual(
    Array.from({ length: 14 }, (_, i) => dateOfDay((firstDay + i) % daysPerYear)),
  );
  const sum = (key: 'arrayKWh' | 'thrownAwayKWh' | 'loadKWh' | 'engineHours' | 'darkKWh') =>
    days.reduce((total, day) => total + day[key], 0);
  const kWh = (column: Float64Array) => sumOf(column, firstDay, 14) / 1000;
  expect(sum('arrayKWh')).toBeCloseTo(kWh(ledger.arrayUsedWh), 9);
  expect(sum('thrownAwayKWh')).toBeCloseTo(kWh(ledger.throttledWh), 9);
  expect(sum('engineHours')).toBeCloseTo(sumOf(ledger.generatorH, firstDay, 14), 9);
  // What was asked for at the terminals is what was served and what stayed dark.
  expect(sum('loadKWh')).toBeCloseTo(kWh(load.acW) + kWh(load.dcW), 6);
  expect(days.flatMap(({ starts }) => starts)).toHaveLength(sumOf(ledger.starts, firstDay, 14));
  expect(spell).toMatchObject({ loadKWh: sum('loadKWh'), engineHours: sum('engineHours') });
});

test('a spell may run over New Year', () => {
  const dark = {
    ...year,
    weather: { ...weather, ghiWm2: weather.ghiWm2.map((wm2, h) => (h < 48 || h >= 8712 ? 0 : wm2 + 50)) },
  };
  const { days } = worstSpell(dark, 4);
  expect(days.map(({ date }) => date)).toEqual(['12-30', '12-31', '01-01', '01-02']);
});

/** Sun of so many Wh/m2 on each day, at noon. */
const sunOf = (wh: (day: number) => number) => always(0).map((_, h) => (h % 24 === 12 ? wh(Math.floor(h / 24)) : 0));

test('without load the least sun is worst; a day without load is not', () => {
  const weather = weatherOf({ ghiWm2: sunOf((day) => (day === 200 ? 50 : 1000)) });
  expect(worstSpell(quietYear({}, weather), 1).firstDay).toBe(200);
  const away = (h: number) => (h >= 200 * 24 && h < 201 * 24 ? 0 : h < 24 ? 11 : 10);
  expect(worstSpell(quietYear({ dcW: away }, weather), 1).firstDay).toBe(0);
});

test('of equal spells the first is told', () => {
  const weather = weatherOf({ ghiWm2: sunOf((day) => (day === 90 || day === 300 ? 100 : 1000)) });
  expect(worstSpell(quietYear({ dcW: () => 10 }, weather), 1).firstDay).toBe(90);
});

// Day 90: noted hour by hour, so that each figure is that of its own hours.
test('a day of the spell is told as its hours were', () => {
  const year = quietYear({ dcW: () => 10 }, weatherOf({ ghiWm2: sunOf((day) => (day === 90 ? 100 : 1000)) }));
  const { ledger } = year;
  const at = 90 * 24;
  ledger.stateOfCharge.set([0.71, 0.62, 0.53], at + 16);
  ledger.lowestStateOfCharge.set([0.31, 0.22, 0.33], at + 4);
  ledger.bankC.set([-3, 4, 30], at + 20);
  ledger.dcServedWh.set([500], at);
  ledger.acServedWh.set([400], at + 23);
  ledger.darkWh.set([90, 10], at + 10);
  const spell = worstSpell(year, 2);
  expect(spell.firstDay).toBe(89);
  expect(spell.days[1]).toMatchObject({ eveningCharge: 0.62, lowestCharge: 0.22, bankC: -3, darkKWh: 0.1, loadKWh: 1 });
  expect(spell).toMatchObject({ sunKWhPerM2: 1.1, darkKWh: 0.1, loadKWh: 1 });
});
