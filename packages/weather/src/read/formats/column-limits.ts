import { hoursPerYear } from '@wintergap/ground';
import { WeatherError } from '../../weather-error.js';
import type { ColumnName, HourColumns } from '../hour-columns.js';

// Wider than anything measured as an hourly mean: extraterrestrial irradiance reaches 1412 W/m2, surface
// temperatures -89.2 and 56.7 degC (WMO archive of extremes, from memory).
const limits: Readonly<Record<ColumnName, readonly [low: number, high: number, unit: string]>> = {
  ghi: [0, 1500, 'W/m2'],
  dni: [0, 1500, 'W/m2'],
  dhi: [0, 1500, 'W/m2'],
  air: [-90, 60, 'degC'],
  'air min': [-90, 60, 'degC'],
  'air max': [-90, 60, 'degC'],
  wind: [0, 110, 'm/s'],
  'snow depth': [0, 12, 'm'],
  precipitation: [0, 400, 'mm'],
  albedo: [0, 1, ''],
  'relative humidity': [0, 1.1, '(1 is 100 %)'],
  pressure: [30_000, 110_000, 'Pa'],
};

/** Thermal pyranometers read a few watts below zero on clear nights; down to here that is taken as 0. */
const nightOffsetWm2 = -20;

/**
 * Refuses values that cannot be, and sets the small negative readings of irradiance sensors to 0.
 *
 * @throws WeatherError with the line of the first impossible value
 */
export function checkLimits(hours: HourColumns): void {
  let offsets = 0;
  for (const [name, values] of hours.columns) {
    const [low, high, unit] = limits[name];
    const irradiance = name === 'ghi' || name === 'dni' || name === 'dhi';
    for (let h = 0; h < hoursPerYear; h++) {
      const value = values[h]!;
      if (!(value < low || value > high)) continue;
      if (irradiance && value < 0 && value >= nightOffsetWm2) {
        values[h] = 0;
        offsets++;
        continue;
      }
      const shown = `${Number(value.toPrecision(6))} ${unit}`.trim();
      const allowed = `${low} to ${high} ${unit}`.trim();
      throw new WeatherError(hours.source, hours.lineOfHour[h]!, `${name} is ${shown}, possible is ${allowed}`);
    }
    if (name === 'relative humidity') for (let h = 0; h < hoursPerYear; h++) if (values[h]! > 1) values[h] = 1;
  }
  if (offsets > 0) {
    hours.notices.push({
      code: 'negative-irradiance',
      level: 'note',
      text: `${offsets} irradiance values just below zero (sensor offset) were taken as 0`,
      rows: offsets,
    });
  }
}
