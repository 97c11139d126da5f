import { expect, test } from 'vitest';
import { examineWeather } from './examine-weather.js';
import { readWeather } from './read-weather.js';

test('the example of the README gives the results stated there', () => {
  const rows = ['# latitude: 46.9', '# longitude: -92.2', '# utc offset: -6', 'ghi [W/m2],air [degF],wind [mph]'];
  for (let h = 0; h < 8760; h++) rows.push(`${h % 24 === 12 ? 300 : 0},14,10`);
  const weather = readWeather(rows.join('\n'), { source: 'invented.csv' });
  expect(weather.airC[0]).toBeCloseTo(-10, 12);
  expect(weather.splitFrom).toBe('erbs');
  expect(examineWeather(weather).year.ghiKWhM2).toBeCloseTo(109.5, 10);
});
