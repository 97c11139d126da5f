import { hoursPerYear, monthSpan } from '@wintergap/ground';
import type { WeatherYear } from '../weather-year.js';

/** Sums and means over a month or the year. */
export interface WeatherSums {
  ghiKWhM2: number;
  dniKWhM2: number;
  dhiKWhM2: number;
  meanAirC: number;
  minAirC: number;
  maxAirC: number;
  meanWindMs: number;
  /** `null` when the weather has none. */
  precipitationMm: number | null;
  maxSnowDepthM: number | null;
}

export function sumMonth(weather: WeatherYear, month: number): WeatherSums {
  const { fromHour, toHour } = monthSpan(month);
  return sumHours(weather, fromHour, toHour);
}

export function sumYear(weather: WeatherYear): WeatherSums {
  return sumHours(weather, 0, hoursPerYear);
}

function sumHours(weather: WeatherYear, from: number, to: number): WeatherSums {
  const { airC, precipitationMm, snowDepthM } = weather;
  let minAirC = airC[from]!;
  let maxAirC = minAirC;
  for (let h = from; h < to; h++) {
    minAirC = Math.min(minAirC, airC[h]!);
    maxAirC = Math.max(maxAirC, airC[h]!);
  }
  let deepest = 0;
  if (snowDepthM) for (let h = from; h < to; h++) deepest = Math.max(deepest, snowDepthM[h]!);
  return {
    ghiKWhM2: sum(weather.ghiWm2, from, to) / 1000,
    dniKWhM2: sum(weather.dniWm2, from, to) / 1000,
    dhiKWhM2: sum(weather.dhiWm2, from, to) / 1000,
    meanAirC: sum(airC, from, to) / (to - from),
    minAirC,
    maxAirC,
    meanWindMs: sum(weather.windMs, from, to) / (to - from),
    precipitationMm: precipitationMm ? sum(precipitationMm, from, to) : null,
    maxSnowDepthM: snowDepthM ? deepest : null,
  };
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let h = from; h < to; h++) total += values[h]!;
  return total;
}
