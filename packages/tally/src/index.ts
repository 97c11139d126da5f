export { assertCloses, type Closing, closingTolerance, measureClosing } from './closing.js';
export { type Contract, contractOf } from './contract.js';
export { engineTimes } from './engine-times.js';
export { createLedger, type EnergyColumn, energyColumns, type Ledger, ledgerColumns } from './ledger.js';
export { monthlyHoursAbove, monthlySums, yearSum } from './months.js';
export { longestDaysBelow, longestDaysBetween } from './spells.js';
export { type Caution, type Summary, summarise, type YearFacts } from './summary.js';
export { type ThrottleSeason, throttleSeason } from './throttle.js';
