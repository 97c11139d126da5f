export { type CheckedDesign, checkText, problemsFound, safetyNotice } from './check-text.js';
export { compareText, type NamedYear } from './compare-text.js';
export { dayText } from './day-text.js';
export { ledgerCsv } from './ledger-csv.js';
export { lossesText } from './losses-text.js';
export { weatherText } from './weather-text.js';
export { weighText } from './weigh-text.js';
export { whyText } from './why-text.js';
export { headline, yearText } from './year-text.js';
