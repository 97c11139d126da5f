import { dateOfDay, daysPerYear, hoursPerYear, monthSpan } from '@wintergap/ground';

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
/** A day counts as throttled when more than this share of what was available was thrown away. */
const throttledShareOfDay = 0.05;
/** It belongs to the season when more than this share was thrown away in the fortnight around it. */
const throttledShareOfFortnight = 0.1;
const fortnightHalf = 7;

/**
 * The throttle calendar and the dates of the throttling season.
 *
 * A day is in season when more than 10 % of the energy offered in the fortnight around it is thrown away: one bright day
 * in a dark month does not make a season. The season is all but the year's longest run of days out of season, so it may
 * run past New Year; it begins and ends with a day that throttles (more than 5 % of its energy). An hour throttles when
 * more than 1 % is thrown away: below that the controller is trimming the charge, not refusing it.
 */
export function throttleSeason(throttledWh: Float64Array, availableWh: Float64Array): ThrottleSeason {
  const calendar = Array.from({ length: 12 }, () => new Array<number>(24).fill(0));
  let hours = 0;
  const thrownByDay = new Float64Array(daysPerYear);
  const offeredByDay = new Float64Array(daysPerYear);
  for (const [month, row] of calendar.entries()) {
    const { fromHour, toHour, days } = monthSpan(month);
    const share = 1 / days;
    for (let h = fromHour; h < toHour; h++) {
      if (throttledWh[h]! > throttledShareOfHour * availableWh[h]!) {
        hours++;
        row[h % 24]! += share;
      }
    }
  }
  for (let h = 0; h < hoursPerYear; h++) {
    const day = Math.floor(h / 24);
    thrownByDay[day]! += throttledWh[h]!;
    offeredByDay[day]! += availableWh[h]!;
  }
  const season = seasonOf(thrownByDay, offeredByDay);
  return {
    hours,
    calendar: calendar.map((row) => row.map((share) => Math.min(1, share))),
    firstDate: season && dateOfDay(season.first),
    lastDate: season && dateOfDay(season.last),
  };
}

function seasonOf(thrownByDay: Float64Array, offeredByDay: Float64Array): { first: number; last: number } | null {
  const inSeason = new Uint8Array(daysPerYear);
  for (let day = 0; day < daysPerYear; day++) {
    let thrown = 0;
    let offered = 0;
    for (let away = -fortnightHalf; away <= fortnightHalf; away++) {
      const near = (day + away + daysPerYear) % daysPerYear;
      thrown += thrownByDay[near]!;
      offered += offeredByDay[near]!;
    }
    inSeason[day] = thrown > throttledShareOfFortnight * offered ? 1 : 0;
  }
  const gap = longestGap(inSeason);
  if (gap === null) return null;
  let first = (gap.start + gap.length) % daysPerYear;
  let last = (gap.start + daysPerYear - 1) % daysPerYear;
  const throttles = (day: number) => thrownByDay[day]! > throttledShareOfDay * offeredByDay[day]!;
  // A fortnight above a tenth holds a day above a twentieth, so both walks end within it.
  if (gap.length > 0) {
    while (!throttles(first)) first = (first + 1) % daysPerYear;
    while (!throttles(last)) last = (last + daysPerYear - 1) % daysPerYear;
  }
  return { first, last };
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
