import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseSite } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import { readWeatherFile, readWeatherYearsFile, type WeatherYear } from '@wintergap/weather';
import { simulateWeather } from '@wintergap/year';
import { afterAll, test } from 'vitest';
import { realWeather } from '../shared-folder.js';
import { holds, type Source } from '../validation/hold.js';

// The hours of a year are thrown away, and made again from its days: what a daily table costs. Without snow, which days
// and hours of these files do not know alike.

const folder = mkdtempSync(join(tmpdir(), 'wintergap-days-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Years {
  name: string;
  file: string;
  place: { latitudeDeg: number; longitudeDeg: number; utcOffsetH: number; elevationM: number };
}
const lyngby = { latitudeDeg: 55.79064, longitudeDeg: 12.52505, utcOffsetH: 1, elevationM: 50 };
const years: Years[] = [
  { name: 'Lyngby 2016', file: 'lyngby-2016.csv', place: lyngby },
  { name: 'Lyngby 2017', file: 'lyngby-2017.csv', place: lyngby },
  {
    name: 'Mannheim, typical',
    file: 'mannheim-try.epw',
    place: { latitudeDeg: 49.52, longitudeDeg: 8.55, utcOffsetH: 1, elevationM: 96 },
  },
  {
    name: 'Chicago, typical',
    file: 'chicago-ohare-tmy3.epw',
    place: { latitudeDeg: 41.98, longitudeDeg: -87.92, utcOffsetH: -6, elevationM: 201 },
  },
  {
    name: 'New York, typical',
    file: 'new-york-central-park-tmy3.epw',
    place: { latitudeDeg: 40.78, longitudeDeg: -73.97, utcOffsetH: -5, elevationM: 40 },
  },
];

const ofDay = (values: Float64Array, day: number) => values.subarray(day * 24, day * 24 + 24);
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

/** A daily table of a year: sums of sun, means, lowest and highest air, mean wind. */
function daysOf({ ghiWm2, airC, windMs }: WeatherYear, { latitudeDeg, longitudeDeg }: Years['place']): string {
  const head = [
    '-BEGIN HEADER-',
    'Dates (month/day/year): 01/01/2015 through 12/31/2015 in LST',
    `Location: latitude ${latitudeDeg} longitude ${longitudeDeg}`,
    'ALLSKY_SFC_SW_DWN irradiation (kW-hr/m^2/day)',
    'T2M air (C)',
    'T2M_MIN lowest air (C)',
    'T2M_MAX highest air (C)',
    'WS10M wind (m/s)',
    '-END HEADER-',
    'YEAR,DOY,ALLSKY_SFC_SW_DWN,T2M,T2M_MIN,T2M_MAX,WS10M',
  ];
  const rows = Array.from({ length: 365 }, (_, day) => {
    const air = ofDay(airC, day);
    const values = [sum(ofDay(ghiWm2, day)) / 1000, sum(air) / 24, Math.min(...air), Math.max(...air)];
    return [2015, day + 1, ...values, sum(ofDay(windMs, day)) / 24].join();
  });
  return [...head, ...rows].join('\n');
}

const example = readFileSync(join(import.meta.dirname, '../../examples/kettle-pond.yaml'), 'utf8');

function honeyHouseAt({ latitudeDeg, longitudeDeg, elevationM, utcOffsetH }: Years['place'], weather: WeatherYear) {
  const text = example
    .replace(
      /^place: .*$/m,
      `place: { latitude: ${latitudeDeg}, longitude: ${longitudeDeg}, elevation: ${elevationM} m, utcOffset: ${utcOffsetH} h }`,
    )
    .replace(/^snow: .*$/m, 'snow: { cover: none }');
  const { arrays, summary } = simulateWeather(parseSite(text, 'examples/kettle-pond.yaml').base, weather);
  return { planeKWhM2: yearSum(arrays[0]!.plane.planeWm2) / 1000, engineH: summary.generator.hours };
}

for (const { name, file, place } of years) {
  const path = realWeather(file);
  test.skipIf(path === null)(
    `${name}: hours made from the days of a year serve the array and the engine as its own`,
    () => {
      const hourly = readWeatherFile(path!, { place, mend: true });
      const table = join(folder, `${file}-days.csv`);
      writeFileSync(table, daysOf(hourly, place));
      const [year] = readWeatherYearsFile(table, { place });
      const own = honeyHouseAt(place, hourly);
      const made = honeyHouseAt(place, year!.weather!);
      const source: Source = { from: `its own hours, ${file}`, sure: 'independent' };
      holds(source, `light on the honey house's plane, kWh/m2, ${name}`, made.planeKWhM2, own.planeKWhM2, {
        share: 0.03,
      });
      holds(source, `its engine in the year, h, ${name}`, made.engineH, own.engineH, { within: 12 });
    },
  );
}
