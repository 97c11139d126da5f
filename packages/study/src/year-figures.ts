import type { YearResult } from '@wintergap/year';

/** The few figures by which one year of one design is judged. */
export interface YearFigures {
  /** Where the weather came from. */
  weather: string;
  generatorHours: number;
  /** Of each month, January first. */
  generatorMonthHours: number[];
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

export function yearFigures({ summary }: YearResult): YearFigures {
  const { generator, load, throttle, bank, weather } = summary;
  return {
    weather: weather.source,
    generatorHours: generator.hours,
    generatorMonthHours: generator.months.map(({ hours }) => hours),
    starts: generator.starts,
    fuelLitres: generator.fuelLitres,
    darkHours: load.darkHours,
    darkKWh: load.darkKWh,
    loadKWh: load.acKWh + load.dcKWh,
    throttledKWh: throttle.kWh,
    lowestStateOfCharge: bank.minStateOfCharge,
    autonomyDays: bank.autonomyDays,
    ghiKWhPerM2: weather.ghiKWhPerM2,
  };
}
