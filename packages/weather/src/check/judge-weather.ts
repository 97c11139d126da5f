import type { SunYear } from '@wintergap/irradiance';
import { sunOf, sunPlace } from '../sun-of-place.js';
import type { Notice, Verdict, WeatherJudgement, WeatherPlace, WeatherYear } from '../weather-year.js';
import { type Closure, closureNotices, measureClosure } from './check-closure.js';
import { placeNotices } from './check-place.js';
import { plausibleNotices } from './check-plausible.js';
import { repeatNotices } from './check-repeats.js';
import { skyLimitNotices } from './check-sky-limits.js';
import { snowNotices } from './check-snow.js';
import { measureTiming, type Timing, timingNotices } from './check-timing.js';

/** What is known besides the weather itself. */
export interface JudgeSettings {
  /** Where the weather will be used; latitude, longitude and offset stand in where the file has none. */
  site?: WeatherPlace;
  /** The sun of the site, where it is there already: used when the file's place is the same within 0.05 degrees. */
  sun?: SunYear;
  /** Days with snow are given from elsewhere, so weather without snow is no lack. */
  snowIsGiven?: boolean;
}

/** A judgement with the measurements it rests on. */
export interface MeasuredJudgement extends WeatherJudgement {
  /** `null` when the place is not known well enough to compute the sun. */
  closure: Closure | null;
  timing: Timing | null;
}

/**
 * Whether a weather year can be trusted: sun against the clock, global against beam and diffuse, the limits of the sky,
 * units against what a place can have, copied days, stuck readings, snow, and the distance from the site.
 *
 * One error makes it `rejected`, one warning `usable`. Some milliseconds when the sun is given.
 */
export function judgeWeather(weather: WeatherYear, settings: JudgeSettings = {}): MeasuredJudgement {
  const { site = {}, snowIsGiven = false } = settings;
  const where = sunPlace({ ...site, ...weather.place });
  const notices = [...weather.notices];
  let closure: Closure | null = null;
  let timing: Timing | null = null;
  if (where) {
    const sun = settings.sun && isNear(settings.sun, where) ? settings.sun : sunOf(where);
    notices.push(...plausibleNotices(weather, sun));
    closure = measureClosure(weather, sun);
    timing = measureTiming(weather, sun);
    notices.push(...(timing ? timingNotices(timing, weather, where) : []));
    notices.push(...closureNotices(closure), ...skyLimitNotices(weather, sun));
  } else {
    notices.push(...plausibleNotices(weather, null), {
      code: 'place-unknown',
      level: 'warning',
      text: 'latitude, longitude or UTC offset is not known, so the sun in the file could not be checked against the clock',
    });
  }
  notices.push(...repeatNotices(weather), ...(snowIsGiven ? [] : snowNotices(weather)));
  notices.push(...placeNotices(weather.place, site));
  return { ...judgementOf(weather.source, notices), closure, timing };
}

/** The judgement that a list of notices amounts to. */
export function judgementOf(source: string, notices: readonly Notice[]): WeatherJudgement {
  const errors = notices.filter(({ level }) => level === 'error');
  const warnings = notices.filter(({ level }) => level === 'warning');
  const verdict: Verdict = errors.length > 0 ? 'rejected' : warnings.length > 0 ? 'usable' : 'good';
  return { verdict, line: lineOf(source, verdict, errors, warnings), notices: [...notices] };
}

function lineOf(source: string, verdict: Verdict, errors: readonly Notice[], warnings: readonly Notice[]): string {
  // A code is a few words with dashes between; people read them without.
  const inWords = (list: readonly Notice[]): string =>
    [...new Set(list.map(({ code }) => code.replaceAll('-', ' ')))].join(', ');
  switch (verdict) {
    case 'good':
      return `${source}: good, it can be trusted`;
    case 'usable':
      return `${source}: usable with care (${inWords(warnings)})`;
    case 'rejected':
      return `${source}: rejected (${inWords(errors)})`;
  }
}

const nearDeg = 0.05;

/** Within 0.05 degrees the sun differs by 12 seconds. */
function isNear({ place }: SunYear, where: { latitudeDeg: number; longitudeDeg: number; utcOffsetH: number }): boolean {
  return (
    place.clock !== 'sundial' &&
    place.utcOffsetH === where.utcOffsetH &&
    Math.abs(place.latitudeDeg - where.latitudeDeg) <= nearDeg &&
    Math.abs(place.longitudeDeg - where.longitudeDeg) <= nearDeg
  );
}
