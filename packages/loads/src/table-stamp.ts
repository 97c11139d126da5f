/** Which stretch of time a stamp's form repeats in. */
export type StampForm = 'dated' | 'year' | 'week' | 'day';

/** When an interval of a load table begins, local standard time. */
export interface TableStamp {
  form: StampForm;
  /** Minutes since 1970, since the beginning of a leap year, of Sunday or of the day. */
  minute: number;
  /** Minutes since 1 January of a common year; meaningless for weeks and days. */
  minuteOfYear: number;
  /** 29 February. */
  isLeapDay: boolean;
}

const weekdayNames = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
const monthStartDay = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334];
const daysInMonth = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/**
 * Reads `2023-01-31 14:30` (also with `T` and seconds), `01-31 14:30` in any year, `Mon 14:30` in a typical week or
 * `14:30` in a typical day; `null` for anything else.
 */
export function parseStamp(text: string): TableStamp | null {
  const match =
    /^(?:(?:(?:(\d{4})-)?(\d{1,2})-(\d{1,2})[T ]\s*)|(?:([a-z]{3})[a-z]*\s+))?(\d{1,2}):(\d{2})(?::\d{2}(?:\.0+)?)?$/i.exec(
      text.trim(),
    );
  if (!match) return null;
  const [, yearText, monthText, dayText, weekdayText, hourText, minuteText] = match;
  const minuteOfDay = Number(hourText) * 60 + Number(minuteText);
  if (Number(minuteText) > 59 || minuteOfDay >= 1440) return null;
  if (monthText === undefined) {
    if (weekdayText === undefined) return { form: 'day', minute: minuteOfDay, minuteOfYear: 0, isLeapDay: false };
    const weekday = weekdayNames.indexOf(weekdayText.toLowerCase());
    if (weekday < 0) return null;
    return { form: 'week', minute: weekday * 1440 + minuteOfDay, minuteOfYear: 0, isLeapDay: false };
  }
  const month = Number(monthText) - 1;
  const day = Number(dayText);
  if (!(day >= 1 && day <= (daysInMonth[month] ?? 0))) return null;
  const isLeapDay = month === 1 && day === 29;
  const minuteOfYear = (monthStartDay[month]! + day - 1) * 1440 + minuteOfDay;
  if (yearText === undefined) {
    const minute = minuteOfYear + (month > 1 ? 1440 : 0);
    return { form: 'year', minute, minuteOfYear, isLeapDay };
  }
  const date = Date.UTC(Number(yearText), month, day);
  if (new Date(date).getUTCMonth() !== month) return null;
  return { form: 'dated', minute: date / 60_000 + minuteOfDay, minuteOfYear, isLeapDay };
}
