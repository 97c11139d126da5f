// Everything the HTML report needs, charts and their libraries included. Loaded when a report is asked for, not before.
export { comparePage } from './compare-page.js';
export { yearPage } from './year-page.js';
