import { dateOfDay, daysInMonth, monthStartHour } from './calendar.js';

/** When a full bank makes the charger throttle. */
export interface ThrottleSeason {
  /** First and last day of the throttling season as `MM-DD`; `null` when no day throttles. */
  firstDate: string | null;
  lastDate: string | null;
  /** 12 months by 24 hours of day: share of that month's days on which that hour throttles. */
  calendar: number[][];
  /** Hours in which some of the array's energy was throttled. */
  hours: number;
}

/** An hour counts as throttled when more than this share of what was available was thrown away. */
const throttledShareOfHour = 0.01;
/** A day belongs to the season when more than this share of what was available was thrown away. */
const throttledShareOfDay = 0.05;

/**
 * The throttle calendar and the dates of the throttling season.
 *
 * The season begins on the day after the year's longest run of days without throttling and ends on the day before it,
 * so a winter gap separates two seasons also where a season would run past New Year. A day throttles when more than
 * 5 % of its available energy is thrown away, an hour when more than 1 % is: below that the controller is trimming
 * the charge, not refusing it.
 */
export function throttleSeason(throttledWh: Float64Array, availableWh: Float64Array): ThrottleSeason {
  const calendar = daysInMonth.map(() => new Array<number>(24).fill(0));
  let hours = 0;
  const dayThrottles = new Uint8Array(365);
  for (let month = 0; month < 12; month++) {
    const row = calendar[month]!;
    const share = 1 / daysInMonth[month]!;
    for (let h = monthStartHour[month]!; h < monthStartHour[month + 1]!; h++) {
      if (throttledWh[h]! > throttledShareOfHour * availableWh[h]!) {
        hours++;
        row[h % 24]! += share;
      }
    }
  }
  for (let day = 0; day < 365; day++) {
    let thrown = 0;
    let available = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) {
      thrown += throttledWh[h]!;
      available += availableWh[h]!;
    }
    dayThrottles[day] = thrown > throttledShareOfDay * available ? 1 : 0;
  }
  const gap = longestGap(dayThrottles);
  return {
    hours,
    calendar: calendar.map((row) => row.map((share) => Math.min(1, share))),
    firstDate: gap && dateOfDay((gap.start + gap.length) % 365),
    lastDate: gap && dateOfDay((gap.start + 364) % 365),
  };
}

/** Longest run of zero days round the year; `null` when every day is zero. */
function longestGap(flags: Uint8Array): { start: number; length: number } | null {
  const anchor = flags.indexOf(1);
  if (anchor < 0) return null;
  let best = { start: anchor, length: 0 };
  let length = 0;
  for (let i = 1; i <= flags.length; i++) {
    const day = (anchor + i) % flags.length;
    if (flags[day]) {
      if (length > best.length) best = { start: (day - length + flags.length) % flags.length, length };
      length = 0;
    } else {
      length++;
    }
  }
  // Throttling on every day of the year: the season is the calendar year.
  return best.length === 0 ? { start: 0, length: 0 } : best;
}
