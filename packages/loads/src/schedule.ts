import { dayIsWithin, daysPerYear, hoursPerYear, monthOfDay, mustLie, OutOfRangeError } from '@wintergap/ground';

/** A span of the year, both days included, 0 for 1 January; `{ fromDay: 334, toDay: 58 }` is the winter. */
export interface DaySpan {
  fromDay: number;
  toDay: number;
}

/** When an appliance may run, and how much of that time it does. */
export interface Schedule {
  /**
   * How much of the allowed time it runs: a share, `0.35`, or minutes on each allowed day, `{ minutesPerDay: 20 }`.
   * All of it unless given.
   */
  runs?: number | { minutesPerDay: number };
  /** Hours of day `[from, to]`, 6.5 for half past six; `[22, 6]` runs past midnight. All day unless given. */
  hours?: readonly (readonly [from: number, to: number])[];
  /** Days of the week, 0 for Sunday; all unless given. */
  days?: 'all' | 'weekdays' | 'weekends' | readonly number[];
  /** Parts of the year: spans of days, or months with 1 for January. All year unless given. */
  season?: readonly DaySpan[] | { months: readonly number[] };
}

/** Day of the year falls into one of the spans, which may run over the end of the year. */
export function isWithinSpans(day: number, spans: readonly DaySpan[]): boolean {
  return spans.some(({ fromDay, toDay }) => dayIsWithin(day, fromDay, toDay));
}

/** Throws unless every span lies within the year. */
export function checkSpans(name: string, spans: readonly DaySpan[]): void {
  for (const { fromDay, toDay } of spans) {
    mustLie(`${name}: fromDay`, fromDay, 0, daysPerYear - 1);
    mustLie(`${name}: toDay`, toDay, 0, daysPerYear - 1);
  }
}

/**
 * Share of each hour of the year that a schedule fills with running, 0 to 1: the running share spread evenly over the
 * allowed hours. Hours past midnight belong to the day on which their window opened; past 31 December they go on at
 * 1 January.
 *
 * @param name for messages
 * @param firstWeekday weekday of 1 January, 0 for Sunday
 */
export function scheduledShare(name: string, schedule: Schedule, firstWeekday: number): Float64Array {
  mustLie('firstWeekday', firstWeekday, 0, 6);
  const allowed = allowedOfDay(name, schedule.hours ?? [[0, 24]]);
  const running = runningShare(name, schedule.runs ?? 1, allowed);
  const weekdays = weekdaysOf(name, schedule.days ?? 'all');
  const { season } = schedule;
  if (season && 'months' in season) for (const month of season.months) mustLie(`${name}: month`, month, 1, 12);
  else if (season) checkSpans(name, season);

  const share = new Float64Array(hoursPerYear);
  for (let day = 0; day < daysPerYear; day++) {
    if (!weekdays.includes((firstWeekday + day) % 7)) continue;
    if (season && !isInSeason(day, season)) continue;
    for (let k = 0; k < 48; k++) if (allowed[k]! > 0) share[(day * 24 + k) % hoursPerYear]! += allowed[k]! * running;
  }
  // Windows that meet at a fraction of an hour may add up to a hair more than the hour.
  for (let h = 0; h < hoursPerYear; h++) if (share[h]! > 1) share[h] = 1;
  return share;
}

function isInSeason(day: number, season: NonNullable<Schedule['season']>): boolean {
  if (!('months' in season)) return isWithinSpans(day, season);
  return season.months.includes(1 + monthOfDay(day));
}

/** Allowed share of the 48 hours that begin with the day on which the windows open. */
function allowedOfDay(name: string, windows: readonly (readonly [number, number])[]): Float64Array {
  const allowed = new Float64Array(48);
  const ofDay = new Float64Array(24);
  for (const [from, to] of windows) {
    mustLie(`${name}: hours from`, from, 0, 24);
    mustLie(`${name}: hours to`, to, 0, 24);
    if (from === to) {
      throw new OutOfRangeError(`${name}: hours must differ, got [${from}, ${to}]; a whole day is [0, 24]`);
    }
    const end = to > from ? to : to + 24;
    for (let k = Math.floor(from); k < end; k++) {
      const part = Math.min(k + 1, end) - Math.max(k, from);
      allowed[k]! += part;
      ofDay[k % 24]! += part;
    }
  }
  for (let k = 0; k < 24; k++) {
    if (ofDay[k]! > 1 + 1e-9) throw new OutOfRangeError(`${name}: hours overlap between ${k}:00 and ${k + 1}:00`);
  }
  return allowed;
}

function runningShare(name: string, runs: number | { minutesPerDay: number }, allowed: Float64Array): number {
  if (typeof runs === 'number') {
    mustLie(`${name}: running share`, runs, 0, 1);
    return runs;
  }
  let allowedH = 0;
  for (const part of allowed) allowedH += part;
  // Parts of hours leave rounding in the sum.
  const allowedMinutes = Math.round(allowedH * 60e6) / 1e6;
  mustLie(`${name}: minutesPerDay`, runs.minutesPerDay, 0, allowedMinutes);
  return allowedH > 0 ? Math.min(runs.minutesPerDay / 60 / allowedH, 1) : 0;
}

function weekdaysOf(name: string, days: NonNullable<Schedule['days']>): readonly number[] {
  if (days === 'all') return [0, 1, 2, 3, 4, 5, 6];
  if (days === 'weekdays') return [1, 2, 3, 4, 5];
  if (days === 'weekends') return [0, 6];
  for (const day of days) {
    if (!Number.isInteger(day) || day < 0 || day > 6) {
      throw new OutOfRangeError(`${name}: days must be 0 (Sunday) to 6, got ${day}`);
    }
  }
  return days;
}
