import { expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { judgeWeather } from '../../check/judge-weather.js';
import { writeTable } from '../formats/write-table.js';
import { readWeather } from '../read-weather.js';
import { isoStart, tableLines } from '../weather-files.fixture.js';

const good = clearYear();
const headings = 'time,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s]';
const row = (h: number, dull = 1): string =>
  `${isoStart(h)},${(dull * good.ghiWm2[h]!).toFixed(2)},${(dull * good.dniWm2[h]!).toFixed(2)},${(dull * good.dhiWm2[h]!).toFixed(2)},${good.airC[h]},${good.windMs[h]}`;
const missingRow = (h: number, code = ''): string => `${isoStart(h)},${code},${code},${code},${code},${code}`;
const read = (rowOf: (h: number) => string, mend = true) =>
  readWeather(tableLines(headings, rowOf).join('\n'), { source: 'pond.csv', mend });
const sumOf = (values: Float64Array, from: number, to: number) => values.subarray(from, to).reduce((a, b) => a + b, 0);

// 20 May, 60 hours.
const from = 139 * 24 + 5;
const inGap = (h: number) => h >= from && h < from + 60;

test('a long gap is refused with all that is missing, and what to do', () => {
  const run = () => read((h) => (inGap(h) ? missingRow(h) : row(h)), false);
  expect(run).toThrow(/air is missing for 60 hours from 05-20 05:00; gaps up to 6 hours are bridged\. 60 hours of air/);
  expect(run).toThrow(/20 May 05:00 \(60 h\)\. To fill them from the days around: wintergap weather pond.csv --mend/);
});

// Days of one clear sky in a row: what is missing is known, and the neighbours are like it.
test('hours filled from neighbouring days have their sun, their air, and close', () => {
  const mended = read((h) => (inGap(h) ? missingRow(h) : row(h)));
  expect(sumOf(mended.ghiWm2, from, from + 60) / sumOf(good.ghiWm2, from, from + 60)).toBeCloseTo(1, 2);
  expect(sumOf(mended.dniWm2, from, from + 60) / sumOf(good.dniWm2, from, from + 60)).toBeCloseTo(1, 2);
  for (let h = from; h < from + 60; h++) expect(Math.abs(mended.airC[h]! - good.airC[h]!)).toBeLessThan(0.3);
  expect(judgeWeather(mended).closure!.offHours).toBeLessThan(5);
  const flagged = mended.mended!.reduce((count, flag) => count + (flag === 2 ? 1 : 0), 0);
  expect(flagged).toBe(60);
  expect(mended.notices.find(({ code }) => code === 'mended-hours')).toMatchObject({ level: 'note', rows: 60 });
});

test('a day that is known in part scales what is filled', () => {
  // The day is half as bright as its neighbours; its afternoon is missing.
  const day = 150;
  const rowOf = (h: number) => (Math.floor(h / 24) !== day ? row(h) : h % 24 >= 13 ? missingRow(h) : row(h, 0.5));
  const mended = read(rowOf);
  const afternoon = [day * 24 + 13, day * 24 + 24] as const;
  expect(sumOf(mended.ghiWm2, ...afternoon) / sumOf(good.ghiWm2, ...afternoon)).toBeCloseTo(0.5, 2);
});

test('placeholders outside the documented codes are gaps, counted and not told one by one', () => {
  for (const code of ['-99', '-999', '-9999']) {
    const mended = read((h) => (inGap(h) ? missingRow(h, code) : row(h)));
    expect(mended.notices.find((notice) => notice.code === 'placeholders')!.text).toBe(
      `300 values are ${code}: taken as missing`,
    );
    expect(mended.mended![from + 30]).toBe(2);
  }
});

test('more than a fifth of a month without sun is refused', () => {
  const rowOf = (h: number) =>
    h >= 2880 && h < 2880 + 400 ? missingRow(h).replace(/,,$/, `,${good.airC[h]},2`) : row(h);
  expect(() => read(rowOf)).toThrow(/irradiance is missing in \d+ of 744 hours of May: more than 20 % of a month/);
});

test('the table marks mended hours, and reading it keeps the marks', () => {
  const mended = read((h) => (inGap(h) ? missingRow(h) : row(h)));
  const back = readWeather(writeTable(mended), { source: 'mended.csv' });
  expect([...back.mended!]).toEqual([...mended.mended!]);
  expect(back.notices.find(({ code }) => code === 'mended-hours')).toMatchObject({ rows: 60 });
  expect(writeTable(read(row))).not.toContain('mended');
});
