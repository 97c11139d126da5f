import { angleApartDeg } from '@wintergap/ground';
import { type Site, siteError } from '@wintergap/site';
import type { WeatherYear } from '@wintergap/weather';

/** Weather from further away than this is that of another climate, or the site's place is mistyped. */
const furthestLatitudeDeg = 10;
const furthestLongitudeDeg = 20;

/** @throws SiteError when the weather is from another climate than the site */
export function checkWeatherPlace(site: Site, weather: WeatherYear): void {
  const { place } = site;
  const { latitudeDeg, longitudeDeg } = weather.place;
  if (latitudeDeg === undefined || longitudeDeg === undefined) return;
  const east = angleApartDeg(longitudeDeg, place.longitude);
  if (Math.abs(latitudeDeg - place.latitude) <= furthestLatitudeDeg && east <= furthestLongitudeDeg) return;
  throw siteError(
    site,
    'place',
    `the site is at ${place.latitude}, ${place.longitude}, but ${weather.source} is from ${latitudeDeg}, ${longitudeDeg} (north and east positive); one of the two is wrong`,
  );
}
