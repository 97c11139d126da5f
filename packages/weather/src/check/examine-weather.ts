import { sunOf, sunPlace } from '../sun-of-place.js';
import type { Notice, WeatherPlace, WeatherYear } from '../weather-year.js';
import { type Closure, closureNotices, measureClosure } from './check-closure.js';
import { placeNotices } from './check-place.js';
import { repeatNotices } from './check-repeats.js';
import { skyLimitNotices } from './check-sky-limits.js';
import { snowNotices } from './check-snow.js';
import { measureTiming, type Timing, timingNotices } from './check-timing.js';
import { sumMonth, sumYear, type WeatherSums } from './weather-sums.js';

/** What a weather year holds and whether to trust it. */
export interface WeatherReport {
  source: string;
  kind: WeatherYear['kind'];
  place: WeatherPlace;
  year: WeatherSums;
  months: WeatherSums[];
  /** `null` when the place is not known well enough to compute the sun. */
  closure: Closure | null;
  timing: Timing | null;
  /** From reading the file and from examining it. */
  notices: Notice[];
  /** Worst level among the notices: an error is `reject`, a warning `caution`. */
  verdict: 'trust' | 'caution' | 'reject';
}

/**
 * Sums a weather year up and checks it: sun against the clock, global against beam and diffuse, the limits of the sky,
 * copied days, stuck readings, snow, and the distance from the site.
 *
 * @param site where the weather will be used; its latitude, longitude and offset stand in where the file has none
 */
export function examineWeather(weather: WeatherYear, site: WeatherPlace = {}): WeatherReport {
  const place = { ...site, ...weather.place };
  const where = sunPlace(place);
  const notices = [...weather.notices];
  let closure: Closure | null = null;
  let timing: Timing | null = null;
  if (where) {
    const sun = sunOf(where);
    closure = measureClosure(weather, sun);
    timing = measureTiming(weather, sun);
    notices.push(...(timing ? timingNotices(timing, weather, where) : []));
    notices.push(...closureNotices(closure), ...skyLimitNotices(weather, sun));
  } else {
    notices.push({
      code: 'place-unknown',
      level: 'warning',
      text: 'latitude, longitude or UTC offset is not known, so the sun in the file could not be checked against the clock',
    });
  }
  notices.push(...repeatNotices(weather), ...snowNotices(weather), ...placeNotices(weather.place, site));
  return {
    source: weather.source,
    kind: weather.kind,
    place,
    year: sumYear(weather),
    months: Array.from({ length: 12 }, (_, month) => sumMonth(weather, month)),
    closure,
    timing,
    notices,
    verdict: verdictOf(notices),
  };
}

function verdictOf(notices: readonly Notice[]): WeatherReport['verdict'] {
  if (notices.some((notice) => notice.level === 'error')) return 'reject';
  return notices.some((notice) => notice.level === 'warning') ? 'caution' : 'trust';
}
