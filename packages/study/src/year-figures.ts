import type { Site } from '@wintergap/site';
import {
  createLedger,
  energyByMonth,
  engineFigures,
  type Ledger,
  loadFigures,
  smallest,
  yearSum,
} from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import {
  autonomyOfYear,
  type BareYear,
  measuredLoadOf,
  type PreparedCache,
  simulateBare,
  type YearInputs,
} from '@wintergap/year';

/** Hours of the year in weeks from 1 January, the last of eight days. */
const weeksPerYear = 52;
const hoursPerWeek = 168;

/** The few figures by which one year of one design is judged. */
export interface YearFigures {
  /** Where the weather came from. */
  weather: string;
  generatorHours: number;
  /** Of each month, January first. */
  generatorMonthHours: number[];
  /** Of each of 52 weeks from 1 January; the last has the day that is left over. */
  generatorWeekHours: number[];
  starts: number;
  fuelLitres: number;
  /** Hours in which some load stayed dark. */
  darkHours: number;
  darkKWh: number;
  /** Load asked for, AC and DC. */
  loadKWh: number;
  throttledKWh: number;
  /** 0 to 1. */
  lowestStateOfCharge: number;
  /** Days a full bank carries the load of the darkest month without sun. */
  autonomyDays: number;
  /** Global irradiation on the horizontal. */
  ghiKWhPerM2: number;
}

/** Sums of an hourly series over the weeks of the year. */
function weekSums(hourly: Float64Array): number[] {
  const sums = new Array<number>(weeksPerYear).fill(0);
  for (let week = 0; week < weeksPerYear; week++) {
    const to = week === weeksPerYear - 1 ? hourly.length : (week + 1) * hoursPerWeek;
    let sum = 0;
    for (let hour = week * hoursPerWeek; hour < to; hour++) sum += hourly[hour]!;
    sums[week] = sum;
  }
  return sums;
}

/** The figures of a settled year. */
export function yearFigures(year: BareYear): YearFigures {
  const { weather, ledger } = year;
  const engine = engineFigures(ledger);
  const load = loadFigures(ledger, year.load.acW, year.load.dcW);
  return {
    weather: weather.source,
    generatorHours: engine.hours,
    generatorMonthHours: engine.months.map(({ hours }) => hours),
    generatorWeekHours: weekSums(ledger.generatorH),
    starts: engine.starts,
    fuelLitres: engine.fuelLitres,
    darkHours: load.darkHours,
    darkKWh: load.darkKWh,
    loadKWh: load.acKWh + load.dcKWh,
    throttledKWh: energyByMonth(ledger.throttledWh).kWh,
    lowestStateOfCharge: smallest(ledger.lowestStateOfCharge),
    autonomyDays: autonomyOfYear(year),
    ghiKWhPerM2: yearSum(weather.ghiWm2) / 1000,
  };
}

/** One ledger for each thread: it runs one year after another and keeps the figures alone. */
let ledger: Ledger | null = null;

/** The year of a design under a given weather. Its ledger holds until the next year is run in the same thread. */
export const bareYearUnder = (site: Site, weather: WeatherYear, prepared: PreparedCache): BareYear =>
  bareYearOf(site, { weather, measured: measuredLoadOf(site, prepared) }, prepared);

function bareYearOf(site: Site, inputs: YearInputs, prepared: PreparedCache): BareYear {
  ledger ??= createLedger();
  return simulateBare(site, inputs, prepared, ledger);
}

/** The figures of a design under a given weather. */
export const figuresUnder = (site: Site, weather: WeatherYear, prepared: PreparedCache): YearFigures =>
  yearFigures(bareYearUnder(site, weather, prepared));

/** The same from what was read already: no file is opened. */
export const figuresOf = (site: Site, inputs: YearInputs, prepared: PreparedCache): YearFigures =>
  yearFigures(bareYearOf(site, inputs, prepared));
