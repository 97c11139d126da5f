// Everything the HTML report needs, charts and their libraries included. Loaded when a report is asked for, not before.
export { comparePage } from './html-compare-page.js';
export { yearPage } from './html-year-page.js';
