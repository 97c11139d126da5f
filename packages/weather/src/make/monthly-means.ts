import { OutOfRangeError } from '@wintergap/ground';
/** Twelve values, January first. */
export type TwelveMonths = readonly number[];

/** What a climate table says about a place; enough to make a year of hours from. */
export interface MonthlyMeans {
  /** Sunshine on the horizontal: mean daily global irradiation, or its ratio to the extraterrestrial (0 to 1). */
  sun: { kind: 'irradiation'; kWhPerM2Day: TwelveMonths } | { kind: 'clearness'; clearness: TwelveMonths };
  /** Mean air temperature. */
  airC: TwelveMonths;
  /** Means of the daily lowest and highest air temperature; only their difference is used. */
  dailyExtremes?: { minC: TwelveMonths; maxC: TwelveMonths };
  /** Mean wind speed; 3 m/s when left out. */
  windMs?: TwelveMonths;
  /** Snowfall; the year has no snow when left out. */
  snow?: {
    /** Days with new snow in each month. */
    fallDays: TwelveMonths;
    /** Depth of new snow in each month, as it falls; 0.03 m a day when left out. */
    fallM?: TwelveMonths;
  };
}

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Name of a month, 0 to 11, as messages show it. */
export const monthName = (month: number): string => monthNames[month]!;

function checkTwelve(what: string, values: TwelveMonths, lowest: number, highest: number): void {
  if (!Array.isArray(values) || values.length !== 12) {
    throw new OutOfRangeError(`${what} must be 12 values, January first, got ${values?.length ?? values}`);
  }
  for (let m = 0; m < 12; m++) {
    const value = values[m]!;
    if (!(value >= lowest && value <= highest)) {
      throw new OutOfRangeError(`${what} must be ${lowest} to ${highest}, got ${value} for ${monthName(m)}`);
    }
  }
}

/**
 * Checks monthly means before a year is made from them.
 *
 * @throws OutOfRangeError that says which value of which month is not possible
 */
export function checkMonthlyMeans(means: MonthlyMeans): void {
  if (means.sun.kind === 'irradiation') checkTwelve('kWhPerM2Day', means.sun.kWhPerM2Day, 0, 12);
  else checkTwelve('clearness', means.sun.clearness, 0, 1);
  checkTwelve('airC', means.airC, -70, 50);
  if (means.dailyExtremes) {
    const { minC, maxC } = means.dailyExtremes;
    checkTwelve('minC', minC, -80, 50);
    checkTwelve('maxC', maxC, -70, 60);
    for (let m = 0; m < 12; m++) {
      const [low, mean, high] = [minC[m]!, means.airC[m]!, maxC[m]!];
      if (!(low <= mean && mean <= high)) {
        throw new OutOfRangeError(`${monthName(m)}: minC ${low}, airC ${mean}, maxC ${high} must rise in that order`);
      }
    }
  }
  if (means.windMs) checkTwelve('windMs', means.windMs, 0, 30);
  if (means.snow) {
    checkTwelve('fallDays', means.snow.fallDays, 0, 31);
    if (means.snow.fallM) checkTwelve('fallM', means.snow.fallM, 0, 10);
  }
}
