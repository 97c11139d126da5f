import { expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { WeatherError } from '../../weather-error.js';
import { readWeather } from '../read-weather.js';
import { epwFirstLine, epwLines, epwRow } from '../weather-files.fixture.js';

const made = clearYear();
const lines = epwLines(made);
const read = (text: string) => readWeather(text, { source: 'pond.epw' });
const fails = (changed: string[]): WeatherError => {
  try {
    read(changed.join('\n'));
  } catch (error) {
    if (error instanceof WeatherError) return error;
    throw error;
  }
  throw new Error('the file was read');
};
const codes = (text: string) => read(text).notices.map((notice) => notice.code);

test('the row with hour 1 is the hour that begins at midnight', () => {
  const weather = read(lines.join('\n'));
  expect(weather.kind).toBe('epw');
  expect(weather.ghiWm2[12]).toBe(Math.round(made.ghiWm2[12]!));
  expect(weather.airC[8759]).toBe(made.airC[8759]);
  expect(weather.windMs).toEqual(made.windMs);
});

test('the header gives the place and the fields their units', () => {
  const weather = read(lines.join('\n'));
  expect(weather.place).toEqual({
    name: 'Kettle Pond',
    latitudeDeg: 46.9,
    longitudeDeg: -92.2,
    utcOffsetH: -6,
    elevationM: 430,
  });
  expect(weather.relativeHumidity![5]).toBeCloseTo(0.7, 12);
  expect(weather.pressurePa![5]).toBe(96000);
  const snowy = read(epwLines(made, (h) => epwRow(made, h, { tail: '25,3,0.6,1.5,1.0' })).join('\n'));
  expect(snowy.snowDepthM![4000]).toBeCloseTo(0.25, 12);
  expect(snowy.precipitationMm![4000]).toBe(1.5);
  expect(snowy.albedo![4000]).toBe(0.6);
});

test('Windows line ends, a byte-order mark and blank lines at the end change nothing', () => {
  const plain = read(lines.join('\n'));
  expect(read(`\ufeff${lines.join('\r\n')}\r\n\r\n`)).toEqual(plain);
});

test('a missing code counts as missing however many nines it has', () => {
  for (const snow of ['999', '9999', '999.000']) {
    const text = epwLines(made, (h) => epwRow(made, h, { tail: `${snow},99,999.000,999.0,99.0` })).join('\n');
    const weather = read(text);
    expect([weather.snowDepthM, weather.albedo, weather.precipitationMm]).toEqual([null, null, null]);
  }
  for (const code of ['9999', '99999', '999999']) {
    const changed = [...lines];
    const row = changed[epwFirstLine - 1 + 12]!.split(',');
    row[14] = code;
    changed[epwFirstLine - 1 + 12] = row.join(',');
    const weather = read(changed.join('\n'));
    // Beam is worked out again from global and diffuse, which the file rounds to whole watts.
    expect(Math.abs(weather.dniWm2[12]! - 800)).toBeLessThan(10);
  }
});

test('the leap day of a file of 8784 rows is left out', () => {
  const firstOfMarch = lines.findIndex((line) => line.startsWith('2021,3,1,1,'));
  const leap = Array.from({ length: 24 }, (_, h) => epwRow(made, 58 * 24 + h).replace(',2,28,', ',2,29,'));
  const changed = [...lines.slice(0, firstOfMarch), ...leap, ...lines.slice(firstOfMarch)];
  const weather = read(changed.join('\n'));
  expect(weather.ghiWm2).toEqual(read(lines.join('\n')).ghiWm2);
  expect(weather.notices).toContainEqual(expect.objectContaining({ code: 'leap-day-dropped', rows: 24 }));
});

test('months of different calendar years are told as a typical year', () => {
  const text = epwLines(made, (h) => epwRow(made, h, { year: h < 744 ? 1986 : 1999 })).join('\n');
  const notice = read(text).notices.find(({ code }) => code === 'typical-year');
  expect(notice?.text).toContain('1986 to 1999');
  expect(codes(lines.join('\n'))).not.toContain('typical-year');
});

test('errors name the line', () => {
  const change = (line: number, edit: (row: string) => string): string[] => {
    const changed = [...lines];
    changed[line - 1] = edit(changed[line - 1]!);
    return changed;
  };
  expect(fails(change(100, (row) => row.replace(/^2021,1,\d+,\d+/, '2021,1,4,25')))).toMatchObject({
    line: 100,
    file: 'pond.epw',
    message: 'pond.epw line 100: hour is "25", EPW hours run from 1 to 24',
  });
  expect(fails(change(100, (row) => row.slice(0, 40))).message).toMatch(/line 100: \d+ fields, expected the 35/);
  expect(fails(change(100, (row) => row.replace(/^2021,1,/, '2021,13,'))).message).toContain('not on the calendar');
  expect(fails(change(100, () => lines[98]!)).message).toMatch(/^pond.epw line 100: .* is already on line 99/);
  const words = (row: string) => row.split(',').with(6, 'warm').join();
  expect(fails(change(100, words)).message).toBe('pond.epw line 100: air is "warm", expected a number');
  const bright = (row: string) => row.split(',').with(13, '2500').join();
  expect(fails(change(100, bright)).message).toBe('pond.epw line 100: ghi is 2500 W/m2, possible is 0 to 1500 W/m2');
  const negative = (row: string) => row.split(',').with(13, '-300').join();
  expect(fails(change(100, negative)).line).toBe(100);
  expect(fails(change(1, (row) => row.replace('46.9', 'north'))).message).toContain('line 1: latitude is "north"');
  expect(fails(lines.slice(0, 7)).message).toContain('without a DATA PERIODS line');
  expect(fails(change(8, (row) => row.replace('1,1,', '1,4,'))).message).toContain('4 rows an hour');
});

test('a file cut short says how many rows it has and where they stop', () => {
  const error = fails(lines.slice(0, 5000));
  expect(error.line).toBe(5000);
  expect(error.message).toContain('4992 hourly rows, expected 8760 or 8784: the first missing hour begins 07-28 00:00');
});

test('a few missing rows are bridged and told', () => {
  const changed = [...lines.slice(0, 499), ...lines.slice(501)];
  const weather = read(changed.join('\n'));
  expect(weather.airC.every(Number.isFinite)).toBe(true);
  expect(weather.notices[0]).toMatchObject({ code: 'missing-hours', level: 'warning', rows: 2 });
  expect(weather.notices[0]!.text).toContain('after line 499');
});
