export { bestTilt, bestTwoTilts, type TiltPeriod } from '@wintergap/mounts';
export { type ArrayLosses, arrayLosses } from './array-losses.js';
export type { ArrayStage } from './array-stage.js';
export { type BankFacts, bankFacts } from './bank-facts.js';
export { changedDesign } from './changed-design.js';
export { inputFiles } from './input-files.js';
export type { ArrayLimit } from './limits-stage.js';
export {
  designOf,
  loadSite,
  parseSite,
  type SiteFile,
  siteJsonSchema,
} from './load-site.js';
export { readSection } from './read-section.js';
export type { Site } from './schema.js';
export { simulateSite, simulateWeather } from './simulate.js';
export { SiteError, type SiteProblem } from './site-problem.js';
export { StageCache } from './stage-cache.js';
export { siteWeather, siteWeatherYears } from './weather-stage.js';
export type { YearResult } from './year-result.js';
