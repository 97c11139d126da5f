export { assertCloses, type Closing, measureClosing } from './closing.js';
export { type Contract, contractOf } from './contract.js';
export { engineTimes } from './engine-times.js';
export { energyByMonth, engineFigures, loadFigures, smallest } from './figures.js';
export { createLedger, type EnergyColumn, type Ledger, ledgerColumns } from './ledger.js';
export { monthlySums, yearSum } from './months.js';
export { longestDaysBetween } from './spells.js';
export { type Caution, type Summary, summarise, type YearFacts } from './summary.js';
export { type ThrottleSeason, throttleSeason } from './throttle.js';
