import { SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { exampleSite } from '../facts/example.fixture.js';
import { weatherOf } from '../facts/year.fixture.js';
import { checkWeatherPlace } from './weather-place.js';

/** Weather so many degrees from the site, which is at 46.9 north, 92.2 west. */
const from = (northDeg: number, eastDeg: number) => () =>
  checkWeatherPlace(exampleSite, weatherOf({ place: { latitudeDeg: 46.9 + northDeg, longitudeDeg: -92.2 + eastDeg } }));

test('weather from another climate is refused: beyond ten degrees of latitude or twenty of longitude', () => {
  for (const near of [from(9.9, 0), from(-9.9, 0), from(0, 19.9), from(9, -19)]) expect(near).not.toThrow();
  for (const far of [from(10.1, 0), from(-10.1, 0), from(0, 20.1), from(0, -20.1)]) expect(far).toThrow(SiteError);
  expect(from(12, 1)).toThrow(/the site is at 46.9, -92.2, but a sky made by hand is from 58.9, -91.2 /);
});

test('longitudes are compared around the globe', () => {
  const fiji = { ...exampleSite, place: { ...exampleSite.place, latitude: -17, longitude: 178 } };
  const samoa = weatherOf({ place: { latitudeDeg: -14, longitudeDeg: -172 } });
  expect(() => checkWeatherPlace(fiji, samoa)).not.toThrow();
});

test('weather whose place is not known may be from anywhere', () => {
  expect(() => checkWeatherPlace(exampleSite, weatherOf({ place: { longitudeDeg: 100 } }))).not.toThrow();
  expect(() => checkWeatherPlace(exampleSite, weatherOf({ place: { latitudeDeg: -40 } }))).not.toThrow();
});
