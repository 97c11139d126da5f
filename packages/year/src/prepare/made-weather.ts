import { OutOfRangeError } from '@wintergap/ground';
import { fromSite, type Site } from '@wintergap/site';
import {
  judgementOf,
  type MadePlace,
  type MonthlyMeans,
  type MonthSpread,
  makeYear,
  type Notice,
  spreadOfMadeYears,
  type WeatherYear,
} from '@wintergap/weather';

/**
 * A year made from the site's monthly means, with a chance of its own.
 *
 * @param spread of the months about their means, in multiples of a measured one; 0 for none
 * @throws SiteError when no year can have the monthly means, or the site has none
 */
export function madeWeather(site: Site, seed: number, spread: number): WeatherYear {
  const made = fromSite(site, 'weather.months', () => makeYear(meansOf(site), placeOf(site), { seed, spread }));
  const isGuessed = 'months' in site.weather && site.weather.months.guessed === true;
  const judgement = judgementOf(made.source, isGuessed ? [guessedNotice, ...made.notices] : made.notices);
  const line =
    judgement.verdict === 'good' ? `${made.source}: as good as the twelve means it is made from` : judgement.line;
  return { ...made, notices: judgement.notices, judgement: { ...judgement, line } };
}

const guessedNotice: Notice = {
  code: 'guessed-means',
  level: 'warning',
  text: 'nobody has looked up the twelve means: decide nothing on them, and put in a weather file or the means of a station nearby',
};

/**
 * What a spread of the months comes to in years made from the site's monthly means.
 *
 * @param spread in multiples of a measured one
 * @throws SiteError when no year can have the monthly means, or the site has none
 */
export const madeSpread = (site: Site, spread: number): MonthSpread =>
  fromSite(site, 'weather.months', () => spreadOfMadeYears(meansOf(site), placeOf(site), spread));

const placeOf = ({ name, place }: Site): MadePlace => ({
  latitudeDeg: place.latitude,
  longitudeDeg: place.longitude,
  utcOffsetH: place.utcOffset,
  name,
  elevationM: place.elevation,
});

function meansOf({ weather }: Site): MonthlyMeans {
  if ('months' in weather) return monthlyMeans(weather.months);
  throw new OutOfRangeError('made years need weather from monthly means, got a file');
}

type SiteMonths = Extract<Site['weather'], { months: unknown }>['months'];

function monthlyMeans({ irradiation, clearness, air, airMin, airMax, wind, snowyDays }: SiteMonths): MonthlyMeans {
  return {
    sun: irradiation
      ? { kind: 'irradiation', kWhPerM2Day: irradiation }
      : { kind: 'clearness', clearness: clearness ?? [] },
    airC: air,
    ...(airMin && airMax && { dailyExtremes: { minC: airMin, maxC: airMax } }),
    ...(wind && { windMs: wind }),
    ...(snowyDays && { snow: { fallDays: snowyDays } }),
  };
}
