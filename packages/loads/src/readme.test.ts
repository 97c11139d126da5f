import { expect, test } from 'vitest';
import { inverterLosses, inverterYear, loadYear } from './index.js';

test('the example of the README gives the results printed there', () => {
  const airC = Float64Array.from({ length: 8760 }, (_, h) => 5 - 15 * Math.cos((2 * Math.PI * h) / 8760));
  const upShare = Float64Array.from({ length: 8760 }, (_, h) => (h % 24 >= 7 && h % 24 < 17 ? 1 : 0));
  const year = loadYear(
    [
      { name: 'freezer', powerW: 90, runs: 0.35, bus: 'ac', surge: { factor: 6 } },
      { name: 'lights', powerW: 40, runs: 0.5, hours: [[6, 22]], bus: 'ac', drivenBy: { kind: 'daylight' } },
      { name: 'heating pump', powerW: 9, bus: 'dc', drivenBy: { kind: 'outdoor', belowC: 14, fullAtC: -16 } },
      { name: 'radio', powerW: 30, hours: [[18, 22]], standbyW: 2, bus: 'ac' },
    ],
    [{ name: 'party', day: 'dullest-spell', startHour: 18, hours: 6, uses: { energyWh: 4000 }, bus: 'ac' }],
    { airC, upShare, firstWeekday: 1, dullSpellDay: 352 },
  );
  const inverter = { powerW: 2000, surgeW: 4000, ...inverterLosses(2000, 10, { kind: 'peak', efficiency: 0.93 }) };
  const dcW = inverterYear(year.acW, inverter);
  expect(year.items.map(({ name, energyWhYear }) => `${name} ${Math.round(energyWhYear / 1000)}`)).toEqual([
    'freezer 276',
    'lights 44',
    'heating pump 27',
    'radio 58',
    'party 4',
  ]);
  expect(Math.round(year.largestSurgeW)).toBe(1257);
  expect(year.largestSurge).toMatchObject({ hour: 352 * 24 + 18, name: 'freezer' });
  expect(Math.round(dcW.reduce((sum, w) => sum + w, 0) / 1000)).toBe(488);
});
