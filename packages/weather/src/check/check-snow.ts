import { hoursPerYear } from '@wintergap/ground';
import { frostHours, isSuspiciouslyBare } from '../snow-depth.js';
import type { Notice, WeatherYear } from '../weather-year.js';

/** Says what is known of snow: a cold place without any is more likely a file without snow data. */
export function snowNotices(weather: WeatherYear): Notice[] {
  const frost = frostHours(weather);
  if (isSuspiciouslyBare(weather)) {
    return [
      {
        code: 'no-snow-in-frost',
        level: weather.precipitationMm ? 'note' : 'warning',
        text: `snow depth is 0 all year though ${frost} hours are below 0 degC: the file most likely has no snow data${remedy(weather)}`,
        rows: hoursPerYear,
      },
    ];
  }
  if (weather.snowDepthM === null && frost > 0) {
    return [{ code: 'no-snow-data', level: 'note', text: `the file has no snow depth${remedy(weather)}` }];
  }
  return [];
}

const remedy = (weather: WeatherYear): string =>
  weather.precipitationMm ? '; it is built from precipitation and temperature' : ', nor precipitation to build it from';
