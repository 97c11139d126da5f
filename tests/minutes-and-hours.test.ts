import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { cosIncidence, groundReflectedWm2, perezSkyWm2 } from '@wintergap/irradiance';
import { parseSite } from '@wintergap/site';
import { readWeatherFile } from '@wintergap/weather';
import { simulateWeather } from '@wintergap/year';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { realWeather } from './shared-folder.js';
import { aboveTheAirWm2, sunOfMinutes } from './twin/sun.js';

// What docs/your-own-weather.md says that means over hours hide: light on the honey house's plane, which follows the sun
// on its pole at 68 degrees, in December 2016 at Lyngby; minute by minute, and by the program from the hours.
const root = join(import.meta.dirname, '..');
const page = readFileSync(join(root, 'docs/your-own-weather.md'), 'utf8').replace(/\s+/g, ' ');
const [byMinute, byHour] = [realWeather('lyngby-2016-12-minutes.csv'), realWeather('lyngby-2016.csv')];
const place = { latitudeDeg: 55.79064, longitudeDeg: 12.52505, utcOffsetH: 1, elevationM: 50 };
const december = 334;
const tiltDeg = 68;
const albedo = 0.2;

/** Light on the plane in each minute of the month, W/m2. */
function minutesOfPlane(file: string): Float64Array {
  // The statement of the sun knows no leap years: a December of another year stands a few minutes of arc beside it.
  const sun = sunOfMinutes(place.latitudeDeg, place.longitudeDeg, place.utcOffsetH, 2017);
  const rows = Papa.parse<string[]>(readFileSync(file, 'utf8').trim()).data.slice(1);
  return Float64Array.from(rows, ([, ghi, dni, dhi], i) => {
    if (Number(ghi) <= 0) return 0;
    const zenithDeg = sun.zenithDeg[december * 1440 + i]!;
    const azimuthDeg = sun.azimuthDeg[december * 1440 + i]!;
    const cos = Math.max(0, cosIncidence(zenithDeg, azimuthDeg, tiltDeg, azimuthDeg));
    const normalWm2 = aboveTheAirWm2(december + Math.floor(i / 1440));
    const skyWm2 = perezSkyWm2(Number(dhi), Number(dni), normalWm2, zenithDeg, cos, tiltDeg);
    return Number(dni) * cos + skyWm2 + groundReflectedWm2(Number(ghi), albedo, tiltDeg);
  });
}

/** The same by hours, as the program has it. */
function hoursOfPlane(file: string): Float64Array {
  const text = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8').replace(
    /^place: .*$/m,
    'place: { latitude: 55.79064, longitude: 12.52505, elevation: 50 m, utcOffset: 1 h }',
  );
  const weather = readWeatherFile(file, { place, mend: true });
  const { arrays } = simulateWeather(parseSite(text, join(root, 'examples/kettle-pond.yaml')).base, weather);
  return arrays[0]!.plane.planeWm2.slice(december * 24);
}

/** What of the light lies above a limit, kWh/m2 in the month. */
const above = (light: Float64Array, limitWm2: number): number =>
  light.reduce((sum, wm2) => sum + Math.max(0, wm2 - limitWm2), 0) / ((1000 * light.length) / (31 * 24));

test.skipIf(byMinute === null || byHour === null)('what hours hide of minutes is what the page says of it', () => {
  const minutes = minutesOfPlane(byMinute!);
  const hours = hoursOfPlane(byHour!);
  const both = (limitWm2: number) => [above(minutes, limitWm2).toFixed(1), above(hours, limitWm2).toFixed(1)] as const;
  const [[all, allByHour], [above400, above400ByHour], [above600, above600ByHour]] = [both(0), both(400), both(600)];
  expect(page).toContain(
    `array's plane got ${all} kWh/m2, by the hours ${allByHour}. Above 400 W/m2 lie ${above400} by minutes`,
  );
  expect(page).toContain(
    `and ${above400ByHour} by hours, above 600 W/m2 ${above600} and ${above600ByHour}, above 1000 W/m2,`,
  );
  expect(page).toContain('nothing in either');
  expect(both(1000)).toEqual(['0.0', '0.0']);
  expect(page).toContain('up to a fiftieth of the array');
  for (let limitWm2 = 100; limitWm2 <= 900; limitWm2 += 100) {
    expect(above(minutes, limitWm2) - above(hours, limitWm2)).toBeLessThan(above(minutes, 0) / 50);
  }
});
