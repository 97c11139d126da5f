import { makeYear, readWeatherFile } from '@wintergap/weather';
import { simulateSite, simulateWeather } from '@wintergap/year';
import { median } from 'simple-statistics';
import { expect, test } from 'vitest';
import { honeyHouseAt } from './honey-house.js';
import { realWeather, realWeatherNames } from './shared-folder.js';

const daysInMonth = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const seeds = [1, 2, 3, 4, 5, 6, 7];

/** Twelve means of an hourly series. */
function monthlyMeans(hourly: Float64Array): number[] {
  let start = 0;
  return daysInMonth.map((days) => {
    const month = hourly.subarray(start, start + days * 24);
    start += days * 24;
    return month.reduce((sum, value) => sum + value, 0) / month.length;
  });
}

// What matters of a made year: does the engine run as long as in the real one? Real and made years share their twelve
// means only. One real year is one draw: the made years' middle is held to half and double of it, in fuel (a few runs
// more or less weigh heavily where the engine hardly runs).
test.for(realWeatherNames)('made years burn about the fuel of the real year: %s', (name, { skip }) => {
  const path = realWeather(name);
  if (path === null) return skip('no real weather');
  const site = honeyHouseAt(path, (text) => text.replace('strings: 3', 'strings: 2'));
  const real = simulateSite(site.base);
  const { place } = site.base;
  const weather = readWeatherFile(path);
  const means = {
    sun: { kind: 'irradiation' as const, kWhPerM2Day: monthlyMeans(weather.ghiWm2).map((mean) => (mean * 24) / 1000) },
    airC: monthlyMeans(weather.airC),
    windMs: monthlyMeans(weather.windMs),
  };
  const where = {
    latitudeDeg: place.latitude,
    longitudeDeg: place.longitude,
    utcOffsetH: place.utcOffset,
    elevationM: place.elevation,
  };
  const years = seeds.map((seed) => simulateWeather(site.base, makeYear(means, where, { seed })).summary.generator);
  const litres = median(years.map(({ fuelLitres }) => fuelLitres));
  const hours = median(years.map((year) => year.hours));
  const { generator } = real.summary;
  console.log(
    `${name}: made ${hours.toFixed(0)} h, ${litres.toFixed(0)} L; real ${generator.hours.toFixed(0)} h, ${generator.fuelLitres.toFixed(0)} L; ratio ${(hours / generator.hours).toFixed(2)}`,
  );
  expect(litres / generator.fuelLitres).toBeGreaterThan(0.5);
  expect(litres / generator.fuelLitres).toBeLessThan(2);
});
