import { sunYear } from '@wintergap/irradiance';
import { type SunPlace, sunOf } from '../sun-of-place.js';
import type { Notice, WeatherYear } from '../weather-year.js';
import { measureClosure } from './check-closure.js';

/**
 * What to say of a year whose months centre on 12:00. True solar time does that, but so do cloudy afternoons, or
 * averages of them; the beam can tell, as it closes with global and diffuse only by the clock it was worked out with.
 * Beam that was split from the global irradiance says nothing of it.
 *
 * @param lateness such as `26 min early`, against the sun of the place
 */
export function sundialNotice(weather: WeatherYear, place: SunPlace, lateness: string, level: Notice['level']): Notice {
  const zone = `UTC${place.utcOffsetH >= 0 ? '+' : ''}${place.utcOffsetH}`;
  const centred = `the months' irradiance centres on 12:00 as on a sundial (${lateness} for ${zone}); it may be in true solar time, or clouds or averaging do it`;
  return {
    code: 'sundial-time',
    level,
    text: `${centred}${weather.splitFrom === 'file' ? beamSays(weather, place) : ''}`,
  };
}

function beamSays(weather: WeatherYear, place: SunPlace): string {
  const byZone = measureClosure(weather, sunOf(place)).offShare;
  const bySundial = measureClosure(weather, sunYear({ ...place, clock: 'sundial' })).offShare;
  const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
  const figures = (better: number, worse: number): string =>
    `(${percent(better)} of the daylight hours are off, against ${percent(worse)})`;
  if (byZone <= bySundial) {
    return `; its beam closes better by the standard clock ${figures(byZone, bySundial)}, so the clock may well be right`;
  }
  const fits = (place.longitudeDeg / 15).toFixed(2);
  return `; its beam closes better by the sundial ${figures(bySundial, byZone)}: a UTC offset of ${fits} h for the place brings the two within a quarter of an hour`;
}
