export type { Closure } from './check/check-closure.js';
export { placeNotices } from './check/check-place.js';
export type { Timing } from './check/check-timing.js';
export { examineWeather, type WeatherReport } from './check/examine-weather.js';
export { type JudgeSettings, judgementOf, judgeWeather, type MeasuredJudgement } from './check/judge-weather.js';
export { RejectedWeatherError } from './check/rejected-weather.js';
export type { WeatherSums } from './check/weather-sums.js';
export { unreadableYear, type YearLine, yearLine } from './check/years-report.js';
export {
  type DullRun,
  dailyClearness,
  dailyIrradiation,
  lagOneAutocorrelation,
  longestDullRun,
  type MonthClearness,
  monthlyClearness,
} from './make/clearness-statistics.js';
export { hourlyClearness, hourToDayRatio } from './make/hours.js';
export { type MadePlace, type MakeYearSettings, makeYear, spreadOfMadeYears } from './make/make-year.js';
export { type ClearnessMatrix, clearnessMatrices } from './make/markov-matrices.js';
export type { MonthlyMeans, TwelveMonths } from './make/monthly-means.js';
export { RandomStream } from './make/random.js';
export { writeTable } from './read/formats/write-table.js';
export type { ClockMend } from './read/mend/clock-mend.js';
export { moveToElevation } from './read/mend/move-to-elevation.js';
export type { ReadSettings } from './read/read-settings.js';
export { readWeather, type YearOfFile } from './read/read-weather.js';
export { readWeatherFile, readWeatherYearsFile } from './read/read-weather-file.js';
export { createResampler, type Resampler, type ResampleSettings, resampleYear } from './resample/resample-year.js';
export { hasSnowData, snowDepthFrom } from './snow-depth.js';
export type { MonthSpread, SunSpread } from './spread.js';
export { WeatherError } from './weather-error.js';
export type { Notice, Verdict, WeatherJudgement, WeatherPlace, WeatherYear } from './weather-year.js';
