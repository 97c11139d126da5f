import { expect, test } from 'vitest';
import { clearYear, pond } from '../../check/clear-year.fixture.js';
import { judgeWeather } from '../../check/judge-weather.js';
import type { WeatherYear } from '../../weather-year.js';
import { readWeather } from '../read-weather.js';
import { isoStart, tableLines } from '../weather-files.fixture.js';
import type { ClockMend } from './clock-mend.js';

const headings = 'time,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s]';
const rowsOf = (year: WeatherYear, time = isoStart) =>
  tableLines(
    headings,
    (h) =>
      `${time(h)},${year.ghiWm2[h]!.toFixed(2)},${year.dniWm2[h]!.toFixed(2)},${year.dhiWm2[h]!.toFixed(2)},${year.airC[h]},${year.windMs[h]}`,
  ).join('\n');
const read = (text: string, clock?: ClockMend) => readWeather(text, { source: 'pond.csv', clock });
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

// The fixture's clock is wrong on purpose; the sun is suncalc's.
test.each([
  [-360, /most likely in UTC|it would fit/],
  [60, /summer time all year/],
  [30, /readings at the full hour/],
  [360, /the file is most likely in UTC/],
])('a clock %d minutes off is told with its cause and the line that mends it, and the line mends it', (fast, cause) => {
  const text = rowsOf(clearYear(pond, () => fast));
  const { text: told } = judgeWeather(read(text)).notices.find(({ code }) => code === 'sun-off-time')!;
  expect(told).toMatch(cause);
  expect(told).toContain(`weather: { file: pond.csv, clock: { shift: ${-fast} min } }`);
  const mended = read(text, { shiftH: -fast / 60 });
  const judgement = judgeWeather(mended);
  expect(Math.abs(judgement.timing!.lateMin)).toBeLessThan(3);
  expect(judgement.verdict).toBe('good');
  expect(judgement.notices.map(({ code }) => code)).toContain('clock-mended');
});

test('a shift by part of an hour keeps the sums, and puts no sun into the night', () => {
  const year = clearYear(pond, () => 30);
  const before = read(rowsOf(year));
  const mended = read(rowsOf(year), { shiftH: -0.5 });
  expect(sum(mended.ghiWm2)).toBeCloseTo(sum(before.ghiWm2), 6);
  expect(sum(mended.dniWm2)).toBeCloseTo(sum(before.dniWm2), 6);
  expect(sum(mended.airC)).toBeCloseTo(sum(before.airC), 6);
  expect(judgeWeather(mended).notices.map(({ code }) => code)).not.toContain('sun-at-night');
});

// The clock of the file goes forward on 10 March and back on 3 November: one hour is not in it, one is in it twice.
test('summer time in the file is told, and mended by its dates', () => {
  const [fromDay, toDay] = [68, 306];
  const good = clearYear();
  const wallTime = (h: number) => isoStart(h >= fromDay * 24 + 2 && h < toDay * 24 + 2 ? h + 1 : h);
  const text = rowsOf(good, wallTime);
  expect(() => read(text)).toThrow(/already on line/);
  const mended = read(text, { shiftH: 0, summerTime: { from: fromDay, to: toDay } });
  for (let h = 0; h < 8760; h++) expect(Math.abs(mended.ghiWm2[h]! - good.ghiWm2[h]!)).toBeLessThan(0.01);
  expect(judgeWeather(mended).verdict).toBe('good');
});
