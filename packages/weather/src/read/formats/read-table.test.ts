import { describe, expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { readWeather } from '../read-weather.js';
import { isoStart, tableLines } from '../weather-files.fixture.js';
import { writeTable } from './write-table.js';

const made = clearYear();
const read = (lines: string[]) => readWeather(lines.join('\n'), { source: 'pond.csv' });
const plain = tableLines('time,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s]', (h) =>
  [isoStart(h), made.ghiWm2[h], made.dniWm2[h], made.dhiWm2[h], made.airC[h], made.windMs[h]].join(),
);

test('a plain table gives its numbers and its place', () => {
  const weather = read(plain);
  expect(weather.kind).toBe('table');
  for (const name of ['ghiWm2', 'dniWm2', 'dhiWm2', 'airC', 'windMs'] as const) {
    expect(weather[name]).toEqual(made[name]);
  }
  expect(weather.place).toMatchObject({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
  expect(weather.place.elevationM).toBeCloseTo(430.07, 2);
  expect(weather.notices).toEqual([]);
});

test('columns may stand in any order, in other units, under other names, with semicolons', () => {
  const weather = read(
    tableLines(
      'Wind speed (mph);Temperature [degF];Snow depth [in];Rain [in];Global horizontal [kW/m2];time;remarks',
      (h) => [10, 14, 12, 0.1, made.ghiWm2[h]! / 1000, isoStart(h).replace('T', ' '), 'x'].join(';'),
    ),
  );
  expect(weather.windMs[7]).toBeCloseTo(4.4704, 10);
  expect(weather.airC[7]).toBeCloseTo(-10, 10);
  expect(weather.snowDepthM![7]).toBeCloseTo(0.3048, 10);
  expect(weather.precipitationMm![7]).toBeCloseTo(2.54, 10);
  expect(weather.ghiWm2[3000]).toBeCloseTo(made.ghiWm2[3000]!, 9);
  expect(weather.notices.find(({ code }) => code === 'columns-ignored')?.text).toBe('columns not used: remarks');
});

test('hourly energy in Wh/m2 or MJ/m2 is the mean irradiance of the hour', () => {
  for (const [unit, factor] of [
    ['Wh/m2', 1],
    ['MJ/m2', 0.0036],
    ['kWh/m2', 0.001],
  ] as const) {
    const weather = read(
      tableLines(`time,ghi [${unit}],dni [${unit}],dhi [${unit}],air [degC]`, (h) =>
        [isoStart(h), ...[made.ghiWm2, made.dniWm2, made.dhiWm2].map((sun) => sun[h]! * factor), 5].join(),
      ),
    );
    expect(weather.ghiWm2[12]).toBeCloseTo(made.ghiWm2[12]!, 9);
  }
});

test('"time ends" names the end of the hour, midnight belonging to the day before', () => {
  const ends = tableLines('time ends,ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC],wind [m/s]', (h) => {
    const time = h === 8759 ? '2024-01-01T00:00' : isoStart(h + 1);
    return [time, made.ghiWm2[h], made.dniWm2[h], made.dhiWm2[h], made.airC[h], made.windMs[h]].join();
  });
  expect(read(ends).airC).toEqual(made.airC);
});

test('without times exactly 8760 rows are taken from 1 January, with a warning', () => {
  const rows = tableLines('ghi [W/m2],dni [W/m2],dhi [W/m2],air [degC]', (h) =>
    [made.ghiWm2[h], made.dniWm2[h], made.dhiWm2[h], made.airC[h]].join(),
  );
  const weather = read(rows);
  expect(weather.airC).toEqual(made.airC);
  expect(weather.notices.map(({ code }) => code)).toEqual(['time-assumed', 'wind-assumed']);
  expect(() => read(rows.slice(0, -1))).toThrow('pond.csv line 5: no time column and 8759 rows');
});

describe('errors name the line and the cure', () => {
  const change = (line: number, edit: (row: string) => string) => () => {
    read(plain.with(line - 1, edit(plain[line - 1]!)));
  };
  test.each<[string, number, (row: string) => string, string]>([
    ['a heading without unit', 5, (row) => row.replace('air [degC]', 'air'), 'write air [degC]'],
    ['a heading of the wrong kind', 5, (row) => row.replace('[m/s]', '[kW]'), 'expected a speed, such as wind [m/s]'],
    ['a column twice', 5, (row) => row.replace('wind [m/s]', 'temperature [degC]'), 'two columns are air'],
    ['a zone in the time', 9, (row) => row.replace(',', 'Z,'), 'without a time zone'],
    ['half hours', 9, (row) => row.replace(':00,', ':30,'), 'expected full hours'],
    ['a day that is not', 9, (row) => row.replace('01-01', '02-30'), 'not on the calendar'],
    ['a short row', 9, (row) => row.replace(/,[^,]*$/, ''), '5 fields, expected 6'],
    ['a word', 9, (row) => row.replace(/[^,]*$/, 'calm'), 'wind is "calm", expected a number'],
    ['a decimal comma', 9, (row) => row.replace(/[^,]*$/, '"2,5"'), 'with a point, not a comma'],
    ['an hour twice', 9, () => plain[7]!, 'already on line 8; one year of local standard time (no summer time)'],
    ['a latitude off the globe', 1, () => '# latitude: 146', 'latitude is "146", expected a number from -90 to 90'],
    ['an elevation without unit', 4, () => '# elevation: 430', '430 has no unit; write 430 m or 1411 ft'],
  ])('%s', (_, line, edit, message) => {
    let found = '';
    try {
      change(line, edit)();
    } catch (error) {
      found = String(error);
    }
    expect(found).toContain(`WeatherError: pond.csv line ${line}: `);
    expect(found).toContain(message);
  });

  test('a file that is something else', () => {
    for (const text of ['hello', '\u0000\u0001', '{"a": 1}', '# only a comment']) {
      expect(() => read([text])).toThrow('not an EPW file, a TMY3 file or a table');
    }
    expect(() => read([''])).toThrow('pond.csv line 1: the file is empty');
  });

  test('two years in one file', () => {
    expect(() => read([...plain, ...plain.slice(5)])).toThrow(
      'line 8766: the hour from 01-01 00:00 is already on line 6',
    );
  });
});

test('what is written reads back to the last bit', () => {
  const full = {
    ...made,
    ghiWm2: made.ghiWm2.map((value) => value / 3),
    snowDepthM: made.airC.map((air) => (air < 0 ? -air / 70 : 0)),
    precipitationMm: made.airC.map((_, h) => (h % 9 === 0 ? 0.7 / 3 : 0)),
    relativeHumidity: made.airC.map((_, h) => (h % 11) / 11),
    notices: [{ code: 'typical-year', level: 'note' as const, text: 'invented' }],
  };
  const back = readWeather(writeTable(full), { source: 'written.csv' });
  expect(back.kind).toBe('made');
  expect(back.place).toEqual(full.place);
  for (const name of ['ghiWm2', 'dniWm2', 'airC', 'snowDepthM', 'precipitationMm', 'relativeHumidity'] as const) {
    expect(back[name]).toEqual(full[name]);
  }
  expect(back.albedo).toBeNull();
  expect(back.notices.map(({ code }) => code)).toEqual(['typical-year']);
});
