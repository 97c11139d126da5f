import { expect, test } from 'vitest';
import { examineWeather } from './check/examine-weather.js';
import { makeYear } from './make/make-year.js';
import { readWeather } from './read/read-weather.js';
import { createResampler } from './resample/resample-year.js';

test('the example of the README gives the results stated there', () => {
  const rows = ['# latitude: 46.9', '# longitude: -92.2', '# utc offset: -6', 'ghi [W/m2],air [degF],wind [mph]'];
  for (let h = 0; h < 8760; h++) rows.push(`${h % 24 === 12 ? 300 : 0},14,10`);
  const weather = readWeather(rows.join('\n'), { source: 'invented.csv' });
  expect(weather.airC[0]).toBeCloseTo(-10, 12);
  expect(weather.splitFrom).toBe('erbs');
  expect(examineWeather(weather).year.ghiKWhM2).toBeCloseTo(109.5, 10);
});

test('the made years of the README have the sums stated there', () => {
  const place = { latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 };
  const kWhPerM2Day = [1.6, 2.6, 3.8, 4.8, 5.4, 5.8, 6, 5, 3.6, 2.2, 1.3, 1.1];
  const airC = [-12, -9, -3, 4, 11, 16, 19, 18, 13, 6, -2, -9];
  const year = makeYear({ sun: { kind: 'irradiation', kWhPerM2Day }, airC }, place, { seed: 1 });
  const { yearOf } = createResampler([year], { seed: 1 });
  const sums = [year, yearOf(0), yearOf(1)].map(({ ghiWm2 }) => ghiWm2.reduce((sum, wm2) => sum + wm2, 0) / 1000);
  expect(sums.map(Math.round)).toEqual([1316, 1312, 1316]);
});
