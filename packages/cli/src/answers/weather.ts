import { basename, resolve } from 'node:path';
import { weatherText, weatherYearsText } from '@wintergap/report';
import { acceptingWeather, inputFiles, loadSite, type NamedFile, type Site, weatherYearsOf } from '@wintergap/site';
import {
  examineWeather,
  type ReadSettings,
  readWeatherFile,
  readWeatherYearsFile,
  unreadableYear,
  WeatherError,
  type WeatherPlace,
  type WeatherYear,
  writeTable,
  type YearLine,
  yearLine,
} from '@wintergap/weather';
import { sitePlace, siteWeather } from '@wintergap/year';
import { exitCodes } from '../exit-codes.js';
import { InputError } from '../input-error.js';
import { unitsOption } from '../options/units-option.js';
import { print } from '../output/print.js';
import { writeWhole } from '../output/whole-file.js';

export interface WeatherOptions {
  latitude?: string;
  longitude?: string;
  utcOffset?: string;
  table?: string;
  make?: boolean;
  mend?: boolean;
  site?: boolean;
  json?: boolean;
  units?: string;
}

export function answerWeather(files: string[], options: WeatherOptions): void {
  const [file] = files;
  const site = placeOptions(options);
  const several = options.make || options.site ? [] : yearsNamed(files);
  if (several.length > 1) reportYears(several, site, options);
  else reportYear(file!, several[0]?.path ?? file!, site, options);
}

function reportYear(file: string, path: string, place: WeatherPlace, options: WeatherOptions): void {
  const units = unitsOption(options.units, 'metric');
  const { weather, site, inputs } = options.make
    ? madeWeather(file)
    : options.site
      ? weatherOfSite(file)
      : {
          weather: readWeatherFile(path, settingsOf(place, options)),
          site: place,
          inputs: new Set([resolve(path)]),
        };
  const report = examineWeather(weather, site);
  if (options.table) writeWhole(options.table, writeTable(weather), inputs);
  print(`${options.json ? JSON.stringify(report, null, 2) : weatherText(report, units)}\n`);
  if (report.verdict === 'rejected') process.exitCode = exitCodes.no;
}

function reportYears(named: readonly NamedFile[], site: WeatherPlace, options: WeatherOptions): void {
  if (options.table) throw new InputError('--table: expected one weather year, found several');
  const units = unitsOption(options.units, 'metric');
  const years = named.map((file) => lineOf(file, site, options));
  print(`${options.json ? JSON.stringify({ years }, null, 2) : weatherYearsText(years, units)}\n`);
  if (years.some(({ verdict }) => verdict === 'rejected')) process.exitCode = exitCodes.no;
}

function lineOf({ path, calendarYear }: NamedFile, site: WeatherPlace, options: WeatherOptions): YearLine {
  const settings = settingsOf(site, options);
  const name = calendarYear === undefined ? basename(path) : String(calendarYear);
  try {
    if (calendarYear === undefined) return yearLine(name, readWeatherFile(path, settings), site);
    const found = readWeatherYearsFile(path, settings).find((year) => year.calendarYear === calendarYear);
    if (!found) return unreadableYear(name, 'no rows');
    return found.weather ? yearLine(name, found.weather, site) : unreadableYear(name, found.error.message);
  } catch (error) {
    if (error instanceof WeatherError) return unreadableYear(name, error.message);
    throw error;
  }
}

const settingsOf = (place: WeatherPlace, { mend }: WeatherOptions): ReadSettings => ({ place, ...(mend && { mend }) });

const yearsNamed = (files: readonly string[]): NamedFile[] =>
  weatherYearsOf(
    files.map((file) => ({ written: file, path: file })),
    [],
    process.cwd(),
  );

function placeOptions(options: WeatherOptions): WeatherPlace {
  return {
    ...numberOption('latitudeDeg', options.latitude, '--latitude', -90, 90),
    ...numberOption('longitudeDeg', options.longitude, '--longitude', -180, 180),
    ...numberOption('utcOffsetH', options.utcOffset, '--utc-offset', -12, 14),
  };
}

interface WeatherAtSite {
  weather: WeatherYear;
  site: WeatherPlace;
  /** Files that were read: no table is written over them. */
  inputs: ReadonlySet<string>;
}

/** The weather that a site file names, its clock mended as it says; judged here, so rejected weather is no error. */
function weatherOfSite(file: string): WeatherAtSite {
  const site = acceptingWeather(loadSite(file));
  return { weather: siteWeather(site.base), site: sitePlace(site.base), inputs: inputFiles(site) };
}

function madeWeather(file: string): WeatherAtSite {
  const site = loadSite(file);
  const { base } = site;
  if (!isMonthly(base)) {
    throw new InputError(
      `${file}: weather is a file, not monthly means; expected weather: { months: { irradiation: [...], air: [...] } }`,
    );
  }
  return { weather: siteWeather(base), site: {}, inputs: inputFiles(site) };
}

const isMonthly = ({ weather }: Site): boolean => 'months' in weather;

function numberOption(key: keyof WeatherPlace, text: string | undefined, option: string, min: number, max: number) {
  if (text === undefined) return {};
  const value = Number(text);
  if (text.trim() === '' || !(value >= min && value <= max)) {
    throw new InputError(`${option} ${text}: expected degrees or hours as a bare number from ${min} to ${max}`);
  }
  return { [key]: value };
}
