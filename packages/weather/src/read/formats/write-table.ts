import { hoursPerYear, hourText } from '@wintergap/ground';
import Papa from 'papaparse';
import type { WeatherYear } from '../../weather-year.js';

// Any common year will do: the reader places rows by month, day and hour.
const writtenYear = 2023;

/** A weather year as the plain table. `readWeather` gives back the same numbers to the last bit. */
export function writeTable(weather: WeatherYear): string {
  const columns: [string, Float64Array | null][] = [
    ['ghi [W/m2]', weather.ghiWm2],
    ['dni [W/m2]', weather.dniWm2],
    ['dhi [W/m2]', weather.dhiWm2],
    ['air [degC]', weather.airC],
    ['wind [m/s]', weather.windMs],
    ['snow depth [m]', weather.snowDepthM],
    ['precipitation [mm]', weather.precipitationMm],
    ['albedo', weather.albedo],
    ['relative humidity', weather.relativeHumidity],
    ['pressure [Pa]', weather.pressurePa],
  ];
  const { mended } = weather;
  const isMended = mended?.some((flag) => flag > 0) ?? false;
  const present = columns.filter((column): column is [string, Float64Array] => column[1] !== null);
  const rows: (string | number)[][] = new Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    rows[h] = [`${writtenYear}-${hourText(h).replace(' ', 'T')}`, ...present.map((column) => column[1][h]!)];
    if (isMended) rows[h]!.push(mended![h]!);
  }
  const fields = ['time', ...present.map((column) => column[0]), ...(isMended ? ['mended'] : [])];
  return `${comments(weather).join('\n')}\n${Papa.unparse({ fields, data: rows }, { newline: '\n' })}\n`;
}

function comments(weather: WeatherYear): string[] {
  const { name, latitudeDeg, longitudeDeg, utcOffsetH, elevationM } = weather.place;
  const lines = [
    `source: ${oneLine(weather.source)}`,
    'hourly means; time is the start of the hour in local standard time',
  ];
  if (name !== undefined) lines.push(`name: ${oneLine(name)}`);
  if (latitudeDeg !== undefined) lines.push(`latitude: ${latitudeDeg}`);
  if (longitudeDeg !== undefined) lines.push(`longitude: ${longitudeDeg}`);
  if (utcOffsetH !== undefined) lines.push(`utc offset: ${utcOffsetH}`);
  if (elevationM !== undefined) lines.push(`elevation: ${elevationM} m`);
  if (weather.kind === 'made') lines.push('kind: made');
  if (weather.splitFrom === 'erbs') lines.push('split: erbs');
  if (weather.notices.some((notice) => notice.code === 'typical-year')) lines.push('typical year: yes');
  return lines.map((line) => `# ${line}`);
}

const oneLine = (text: string): string => text.replace(/["\r\n]+/g, ' ').trim();
