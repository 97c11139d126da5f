import { daysInMonth } from '@wintergap/ground';
import type { WeatherYear } from '../weather-year.js';

/** Month, day and hour (0 to 23) of every hour of the year. */
export const calendar: readonly { month: number; day: number; hour: number }[] = daysInMonth.flatMap((count, month) =>
  Array.from({ length: count * 24 }, (_, i) => ({ month: month + 1, day: Math.floor(i / 24) + 1, hour: i % 24 })),
);

/** First data row of the EPW text below stands on this line. */
export const epwFirstLine = 9;

/** An EPW row for an hour; the last four numbers are snow depth cm, days since snow, albedo and rain mm. */
export function epwRow(weather: WeatherYear, h: number, { year = 2021, tail = '0,88,0.2,0.0,0.0' } = {}): string {
  const { month, day, hour } = calendar[h]!;
  const sun = [weather.ghiWm2[h]!, weather.dniWm2[h]!, weather.dhiWm2[h]!].map((value) => value.toFixed(0));
  return `${year},${month},${day},${hour + 1},60,?9?9?9,${weather.airC[h]},-5.0,70,96000,0,0,300,${sun.join()},0,0,0,0,180,${weather.windMs[h]},5,5,20.0,77777,9,999999999,10,0.1,${tail}`;
}

/** An EPW file as lines. */
export function epwLines(weather: WeatherYear, row = (h: number): string => epwRow(weather, h)): string[] {
  return [
    'LOCATION,Kettle Pond,MN,USA,invented,0,46.9,-92.2,-6.0,430.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,"invented, for tests"',
    'COMMENTS 2,none',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
    ...calendar.map((_, h) => row(h)),
  ];
}

const two = (n: number): string => String(n).padStart(2, '0');

/** A TMY3 file as lines: only some of its many columns, in an order of their own, since they are found by name. */
export function tmy3Lines(weather: WeatherYear): string[] {
  return [
    '700000,"KETTLE POND",MN,-6.0,46.900,-92.200,430',
    'Date (MM/DD/YYYY),Time (HH:MM),ETR (W/m^2),Dry-bulb (C),GHI (W/m^2),GHI source,DNI (W/m^2),DHI (W/m^2),Wspd (m/s),RHum (%),Pressure (mbar),Alb (unitless),Lprecip depth (mm)',
    ...calendar.map(({ month, day, hour }, h) =>
      [
        `${two(month)}/${two(day)}/${1990 + month}`,
        `${two(hour + 1)}:00`,
        0,
        weather.airC[h],
        weather.ghiWm2[h]!.toFixed(0),
        1,
        weather.dniWm2[h]!.toFixed(0),
        weather.dhiWm2[h]!.toFixed(0),
        weather.windMs[h],
        70,
        960,
        -9900,
        h % 50 === 0 ? -9900 : 0.1,
      ].join(),
    ),
  ];
}

/** A plain table as lines, with headings and row fields of the caller's making. */
export function tableLines(headings: string, row: (h: number) => string): string[] {
  return [
    '# latitude: 46.9',
    '# longitude: -92.2',
    '# utc offset: -6 h',
    '# elevation: 1411 ft',
    headings,
    ...calendar.map((_, h) => row(h)),
  ];
}

/** `2023-01-31T14:00` of the start of an hour. */
export function isoStart(h: number): string {
  const { month, day, hour } = calendar[h]!;
  return `2023-${two(month)}-${two(day)}T${two(hour)}:00`;
}
