import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { calendarEvents } from './calendar-events.js';

const dayMs = 86_400_000;

/**
 * A design's year as a calendar (iCalendar, RFC 5545), all-day events that come again every year: dates of tilts, fuel to
 * have in store, the weeks in which the engine is needed with its hours and fuel over the common years, snow to sweep where
 * the site file has somebody who does, equalising and exercise runs where it asks for them. The first year is the site's
 * calendar year; the same design gives the same bytes. The library is loaded on the first call.
 */
export async function yearCalendar(result: YearResult, common: CommonAnswer, units: UnitSystem): Promise<string> {
  // A library in the older module form: bundled, its functions stand within the default.
  const library = await import('ics');
  const { createEvents } = library.default ?? library;
  const { name, calendarYear } = result.site;
  const newYear = Date.UTC(calendarYear, 0, 1);
  const dateArray = (dayOfYear: number): [number, number, number] => {
    // The simulated year has no 29 February.
    const leapDay = dayOfYear >= 59 && new Date(Date.UTC(calendarYear, 1, 29)).getUTCMonth() === 1 ? 1 : 0;
    const date = new Date(newYear + (dayOfYear + leapDay) * dayMs);
    return [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
  };
  const events = calendarEvents(result, common, units).map(({ key, title, description, day, days, every }) => ({
    uid: `${wordOf(name)}-${wordOf(key)}@wintergap`,
    title,
    description,
    start: dateArray(day),
    end: dateArray(day + days),
    recurrenceRule: every === undefined ? 'FREQ=YEARLY' : `FREQ=DAILY;INTERVAL=${every}`,
    busyStatus: 'FREE' as const,
    transp: 'TRANSPARENT' as const,
    timestamp: newYear,
  }));
  const { error, value } = createEvents(events, { calName: name, productId: 'wintergap' });
  if (error || !value) throw error ?? new Error('the calendar is empty');
  return value;
}

/** A text as part of an identifier. */
const wordOf = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
