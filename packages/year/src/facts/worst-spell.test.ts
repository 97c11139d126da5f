import { dateOfDay, daysPerYear } from '@wintergap/ground';
import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { simulateSite } from '../simulate.js';
import { worstSpell } from './worst-spell.js';

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
