export type { Closure } from './check-closure.js';
export { placeNotices } from './check-place.js';
export type { Timing } from './check-timing.js';
export {
  type DullRun,
  dailyClearness,
  dailyIrradiation,
  lagOneAutocorrelation,
  longestDullRun,
  type MonthClearness,
  monthlyClearness,
} from './clearness-statistics.js';
export { examineWeather, type WeatherReport } from './examine-weather.js';
export { type ClearnessMatrix, clearnessMatrices } from './markov-matrices.js';
export type { MonthlyMeans, TwelveMonths } from './monthly-means.js';
export { moveToElevation } from './move-to-elevation.js';
export { RandomStream } from './random.js';
export { readWeather } from './read-weather.js';
export { readWeatherFile } from './read-weather-file.js';
export { createResampler, type ResampleSettings, resampleYear } from './resample.js';
export { type Anomaly, usualAnomaly } from './resample-anomaly.js';
export { hasSnowData, snowDepthFrom } from './snow-depth.js';
export { type MadePlace, type MakeYearSettings, makeYear } from './synthesis.js';
export { hourlyClearness, hourToDayRatio } from './synthesis-hours.js';
export { WeatherError } from './weather-error.js';
export type { WeatherSums } from './weather-sums.js';
export type { Notice, WeatherPlace, WeatherYear } from './weather-year.js';
export { writeTable } from './write-table.js';
