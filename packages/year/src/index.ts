export { bestTilt, bestTwoTilts, type TiltPeriod } from '@wintergap/mounts';
export { type ArrayLosses, arrayLosses } from './facts/array-losses.js';
export { type BankFacts, bankFacts } from './facts/bank-facts.js';
export type { ArrayStage } from './prepare/array-stage.js';
export type { ArrayLimit } from './prepare/limits-stage.js';
export { PreparedCache } from './prepare/prepared-cache.js';
export { siteWeather, siteWeatherYears } from './prepare/weather-stage.js';
export { simulateSite, simulateWeather } from './simulate.js';
export type { YearResult } from './year-result.js';
