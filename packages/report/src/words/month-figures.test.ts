import { changedDesign, loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { yearText } from '../text/year.js';
import { monthFigures } from './month-figures.js';

const path = new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname;
const site = loadSite(path);
const radio = simulateSite(
  changedDesign(site, {
    loads: [{ name: 'radio', power: '2 W', bus: 'dc' }],
    generator: undefined,
    'arrays.garden pole.inSeries': 1,
    'arrays.garden pole.strings': 1,
    'arrays.garden pole.module.power': '20 W',
    'arrays.garden pole.module.imp': '0.6 A',
    'arrays.garden pole.module.isc': '0.65 A',
  }),
);

/** The line of a month, as numbers, and the line of units. */
function lineOf(text: string, name: string): string[] {
  const lines = text.split('\n');
  return lines[lines.findIndex((line) => line.startsWith(`${name} `))]!.trim().split(/ {2,}/);
}

// 2 W over the 744 hours of January are 1488 Wh, which 1 kWh hides.
test('the months of a small place are told in Wh', () => {
  const text = yearText(radio, 'metric');
  expect(text).toMatch(/^ +kWh\/m2 +Wh +Wh +Wh +Wh +(Wh +)?charge/m);
  expect(lineOf(text, 'Jan')).toContain('1488');
  expect(lineOf(text, 'Year')).toContain(String(8760 * 2).replace(/(?=...$)/, ' '));
});

test('the months of a house are told in whole kWh, and add up to the year', () => {
  const result = simulateSite(site.base);
  expect(yearText(result, 'metric')).toMatch(/^ +kWh\/m2 +kWh +kWh +kWh +kWh +h /m);
  const { months, year } = monthFigures(result);
  for (const key of ['availableKWh', 'usedKWh', 'thrownKWh', 'engineKWh', 'loadKWh', 'engineHours'] as const) {
    expect(months.reduce((sum, month) => sum + month[key], 0)).toBeCloseTo(year[key], 6);
  }
  expect(year.loadKWh).toBeCloseTo(result.summary.load.acKWh + result.summary.load.dcKWh, 6);
});
