import type { Site } from './site-origin.js';

/** Weekday of 1 January in the site's calendar year, 0 for Sunday. */
export const firstWeekday = ({ calendarYear }: Site): number => new Date(Date.UTC(calendarYear, 0, 1)).getUTCDay();
