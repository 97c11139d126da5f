import { expect, test } from 'vitest';
import { clearYear } from '../../check/clear-year.fixture.js';
import { judgeWeather } from '../../check/judge-weather.js';
import type { WeatherYear } from '../../weather-year.js';
import { readWeather, readWeatherYears } from '../read-weather.js';
import { calendar } from '../weather-files.fixture.js';

const good = clearYear();
const explained: Readonly<Record<string, string>> = {
  ALLSKY_SFC_SW_DWN: 'CERES SYN1deg All Sky Surface Shortwave Downward Irradiance (Wh/m^2)',
  ALLSKY_SFC_SW_DNI: 'CERES SYN1deg All Sky Surface Shortwave Downward Direct Normal Irradiance (Wh/m^2)',
  ALLSKY_SFC_SW_DIFF: 'CERES SYN1deg All Sky Surface Shortwave Diffuse Irradiance (Wh/m^2)',
  T2M: 'MERRA-2 Temperature at 2 Meters (C)',
  WS10M: 'MERRA-2 Wind Speed at 10 Meters (m/s)',
};
const head = (dates: string, texts: Readonly<Record<string, string>> = explained) => [
  '-BEGIN HEADER-',
  'NASA/POWER Source Native Resolution Hourly Data',
  `Dates (month/day/year): 01/01/2021 through 12/31/2021 in ${dates}`,
  'Location: latitude  46.9   longitude -92.2',
  'elevation from MERRA-2: Average for 0.5 x 0.625 degree lat/lon region = 430.0 meters',
  'The value for missing source data that cannot be computed or is outside of the sources availability range: -999',
  'parameter(s):',
  ...Object.entries(texts).map(([name, text]) => `${name}     ${text}`),
  '-END HEADER-',
];
const names = Object.keys(explained);
const columns = ['YEAR,MO,DY,HR', ...names].join();
const valuesOf = (year: WeatherYear, h: number) =>
  [year.ghiWm2, year.dniWm2, year.dhiWm2, year.airC, year.windMs].map((values) => values[h]!.toFixed(2)).join();
const local = calendar.map(({ month, day, hour }, h) => `2021,${month},${day},${hour},${valuesOf(good, h)}`);
const read = (lines: string[], utcOffsetH?: number) =>
  readWeather(lines.join('\n'), { source: 'power.csv', ...(utcOffsetH !== undefined && { place: { utcOffsetH } }) });

test('an hourly table is read by its head, in any order of parameters', () => {
  const weather = read([...head('LST'), columns, ...local]);
  expect(weather.kind).toBe('power');
  expect(weather.place).toMatchObject({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6, elevationM: 430 });
  for (let h = 0; h < 8760; h++) expect(Math.abs(weather.ghiWm2[h]! - good.ghiWm2[h]!)).toBeLessThan(0.01);
  expect(judgeWeather(weather).verdict).toBe('good');
  const turned = read([
    ...head('LST'),
    'YEAR,MO,DY,HR,T2M,WS10M,ALLSKY_SFC_SW_DWN',
    ...calendar.map(
      ({ month, day, hour }, h) =>
        `2021,${month},${day},${hour},${good.airC[h]},2,${h === 5000 ? -999 : good.ghiWm2[h]!.toFixed(2)}`,
    ),
  ]);
  expect(turned.splitFrom).toBe('erbs');
  expect(turned.airC[4000]).toBe(good.airC[4000]);
  expect(turned.mended![5000]).toBe(1);
});

test('a table in UTC is moved to the standard time of the site by whole hours', () => {
  const utc = Array.from({ length: 8760 }, (_, h) => {
    const { month, day, hour } = calendar[h]!;
    return `2021,${month},${day},${hour},${valuesOf(good, (h + 8760 - 6) % 8760)}`;
  });
  const weather = read([...head('UTC'), columns, ...utc], -6);
  for (let h = 0; h < 8760; h++) expect(Math.abs(weather.ghiWm2[h]! - good.ghiWm2[h]!)).toBeLessThan(0.01);
  expect(weather.notices.find(({ code }) => code === 'moved-to-zone')!.text).toContain('-6 h');
  expect(judgeWeather(weather).verdict).toBe('good');
});

test('units come from the head, and what it does not explain is refused', () => {
  const unit = (text: string) => ({ ...explained, ALLSKY_SFC_SW_DWN: `Irradiance (${text})` });
  // A value of 1 MJ in the hour is 277.8 W/m2.
  const small = (line: string) => {
    const fields = line.split(',');
    fields[4] = (Number(fields[4]) * 0.0036).toFixed(6);
    return fields.join();
  };
  const megajoules = read([...head('LST', unit('MJ/hr')), columns, ...local.map(small)]);
  expect(megajoules.ghiWm2[12]! / good.ghiWm2[12]!).toBeCloseTo(1, 3);
  const refused =
    (texts: Record<string, string>, dates = 'LST') =>
    () =>
      read([...head(dates, texts), columns, ...local]);
  expect(refused(unit('lux'))).toThrow(/ALLSKY_SFC_SW_DWN is in "lux", expected Wh\/m\^2 or W\/m\^2/);
  const { T2M: _, ...withoutAir } = explained;
  expect(refused(withoutAir)).toThrow(/the head does not say in which unit T2M is/);
  expect(refused({ ...explained }, 'local time')).toThrow(/does not say whether its dates are in LST or UTC/);
});

const dailyHead = head('LST', {
  ALLSKY_SFC_SW_DWN: 'CERES SYN1deg All Sky Surface Shortwave Downward Irradiance (kW-hr/m^2/day)',
  T2M: 'MERRA-2 Temperature at 2 Meters (C)',
  T2M_MAX: 'MERRA-2 Temperature at 2 Meters Maximum (C)',
  T2M_MIN: 'MERRA-2 Temperature at 2 Meters Minimum (C)',
  WS10M: 'MERRA-2 Wind Speed at 10 Meters (m/s)',
});
const daySum = (values: Float64Array, day: number) =>
  values.subarray(day * 24, day * 24 + 24).reduce((a, b) => a + b, 0);
const days = (year: number, bright: number) =>
  Array.from({ length: 365 }, (_, day) => {
    const air = [...good.airC.subarray(day * 24, day * 24 + 24)];
    const mean = air.reduce((a, b) => a + b, 0) / 24;
    return `${year},${day + 1},${((bright * daySum(good.ghiWm2, day)) / 1000).toFixed(4)},${mean.toFixed(2)},${Math.max(...air)},${Math.min(...air)},3`;
  });

test('daily sums become hours that keep each day’s sum, mean and swing, and differ from year to year', () => {
  const text = [
    ...dailyHead,
    'YEAR,DOY,ALLSKY_SFC_SW_DWN,T2M,T2M_MAX,T2M_MIN,WS10M',
    ...days(2021, 0.6),
    ...days(2022, 0.6),
  ];
  const years = readWeatherYears(text.join('\n'), { source: 'power.csv' });
  expect(years.map(({ calendarYear }) => calendarYear)).toEqual([2021, 2022]);
  const [one, two] = years.map(({ weather }) => weather!);
  for (let day = 0; day < 365; day++) {
    const wanted = Number(((0.6 * daySum(good.ghiWm2, day)) / 1000).toFixed(4)) * 1000;
    expect(Math.abs(daySum(one!.ghiWm2, day) - wanted)).toBeLessThan(1e-6);
    expect(Math.abs(daySum(one!.airC, day) / 24 - daySum(good.airC, day) / 24)).toBeLessThan(0.2);
  }
  expect(one!.ghiWm2[4000]).not.toBe(two!.ghiWm2[4000]);
  expect(judgeWeather(one!).verdict).toBe('good');
});
