import type { Site } from '@wintergap/site';
import { createLedger } from '@wintergap/tally';
import type { WeatherYear } from '@wintergap/weather';
import { type PlantParts, plantOf } from '../loop/plant.fixture.js';
import { sitePlace } from '../prepare/site-place.js';
import type { BareYear } from '../year-result.js';

/** Of the site nothing but its place: what reads more of it is given another. */
const site = {
  name: 'a place',
  place: { latitude: 46.9, longitude: -92.2, elevation: 430, utcOffset: -6 },
} as Site;

export const always = (value: number): Float64Array => new Float64Array(8760).fill(value);

/** Nothing but the sun and the air that a test gives. */
export const weatherOf = (parts: Partial<WeatherYear> = {}): WeatherYear => ({
  source: 'a sky made by hand',
  kind: 'made',
  place: sitePlace(site),
  ghiWm2: always(0),
  dniWm2: always(0),
  dhiWm2: always(0),
  airC: always(10),
  windMs: always(0),
  snowDepthM: null,
  precipitationMm: null,
  albedo: null,
  relativeHumidity: null,
  pressurePa: null,
  splitFrom: 'file',
  notices: [],
  ...parts,
});

/** A year in which nothing happens: a half-full bank at 20 degC, its load asked for and its ledger empty. */
export function quietYear(parts: PlantParts = {}, weather: WeatherYear = weatherOf()): BareYear {
  const plant = plantOf(parts);
  const ledger = createLedger();
  ledger.bankC.fill(20);
  ledger.stateOfCharge.fill(0.5);
  ledger.lowestStateOfCharge.fill(0.5);
  ledger.bankV.fill(24);
  const load = { acW: plant.acW, dcW: plant.dcW, items: [], largestSurge: null, largestSurgeW: 0, coincidentAcW: 0 };
  return { site, weather, arrays: [], load, plant, ledger, settledAfterYears: 1 };
}
