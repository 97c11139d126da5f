import { resolve } from 'node:path';
import { weatherText } from '@wintergap/report';
import { loadSite } from '@wintergap/site';
import { examineWeather, readWeatherFile, type WeatherPlace, type WeatherYear, writeTable } from '@wintergap/weather';
import { siteWeather } from '@wintergap/year';
import type { Command } from 'commander';
import { exitCodes } from '../exit-codes.js';
import { InputError } from '../input-error.js';
import { unitsOption } from '../units-option.js';
import { writeWhole } from '../whole-file.js';

interface WeatherOptions {
  latitude?: string;
  longitude?: string;
  utcOffset?: string;
  table?: string;
  make?: boolean;
  json?: boolean;
  units?: string;
}

export function addWeather(program: Command): void {
  program
    .command('weather')
    .description('what a weather file holds and whether to trust it; convert it to the plain table')
    .argument('<file>', 'EPW, TMY3 or plain table; with --make a site file')
    .option('--latitude <degrees>', 'of the site, north positive: to compare with, or where the file says nothing')
    .option('--longitude <degrees>', 'of the site, east positive')
    .option('--utc-offset <hours>', 'of local standard time, east positive')
    .option('--make', 'make the year from the monthly means in a site file')
    .option('--table <file>', 'write the weather as the plain table (CSV)')
    .option('--json', 'print one JSON document')
    .option('--units <system>', 'metric or us', 'metric')
    .addHelpText(
      'after',
      '\nExample:\n  wintergap weather data-demo/kettle-pond.csv\n  wintergap weather site.yaml --make --table made.csv',
    )
    .action((file: string, options: WeatherOptions) => {
      const { weather, site } = options.make ? madeWeather(file) : fileWeather(file, options);
      const report = examineWeather(weather, site);
      if (options.table) writeWhole(options.table, writeTable(weather), new Set([resolve(file)]));
      if (options.json) process.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
      else process.stdout.write(`${weatherText(report, unitsOption(options.units, 'metric'))}\n`);
      if (report.verdict === 'rejected') process.exitCode = exitCodes.no;
    });
}

interface WeatherAtSite {
  weather: WeatherYear;
  site: WeatherPlace;
}

function fileWeather(file: string, options: WeatherOptions): WeatherAtSite {
  const site: WeatherPlace = {
    ...numberOption('latitudeDeg', options.latitude, '--latitude', -90, 90),
    ...numberOption('longitudeDeg', options.longitude, '--longitude', -180, 180),
    ...numberOption('utcOffsetH', options.utcOffset, '--utc-offset', -12, 14),
  };
  return { weather: readWeatherFile(file, site), site };
}

function madeWeather(file: string): WeatherAtSite {
  const { base } = loadSite(file);
  if (!('months' in base.weather)) {
    throw new InputError(
      `${file}: weather is a file, not monthly means; expected weather: { months: { irradiation: [...], air: [...] } }`,
    );
  }
  return { weather: siteWeather(base), site: {} };
}

function numberOption(key: keyof WeatherPlace, text: string | undefined, option: string, min: number, max: number) {
  if (text === undefined) return {};
  const value = Number(text);
  if (text.trim() === '' || !(value >= min && value <= max)) {
    throw new InputError(`${option} ${text}: expected degrees or hours as a bare number from ${min} to ${max}`);
  }
  return { [key]: value };
}
