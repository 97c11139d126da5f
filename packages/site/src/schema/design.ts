import * as z from 'zod';
import { array } from './array.js';
import { bank } from './bank.js';
import {
  azimuth,
  between,
  date,
  fraction,
  mapping,
  number,
  quantity,
  text,
  upTo,
  wholeNumber,
  word,
} from './fields.js';
import { generator } from './generator.js';
import { converter, event, inverter, load, measured } from './loads.js';
import { designCosts } from './price.js';
import { snow } from './snow.js';
import { usual } from './usual-values.js';
import { weather } from './weather.js';

const place = mapping({
  latitude: number(-90, 90, 'degrees, north positive'),
  longitude: number(-180, 180, 'degrees, east positive'),
  elevation: quantity('length', between(-450, 6000, 'm')).default(0),
  utcOffset: quantity('duration', { min: -12, max: 14, say: '-12 h to 14 h' }),
  /** Lowest temperature on record, for the voltage of a cold array. */
  recordLow: quantity('temperature', between(-90, 60, 'degC')).optional(),
});

const obstacle = mapping({
  from: azimuth,
  to: azimuth,
  top: quantity('length', between(0, 10_000, 'm')),
  distance: quantity('length', upTo(100_000, 'm')),
  clear: mapping({ leafOn: fraction(), leafOff: fraction() }).default({ leafOn: 0, leafOff: 0 }),
});

const siteShape = {
  name: text,
  place,
  weather,
  ground: mapping({ albedo: fraction().default(0.2), snowAlbedo: fraction().default(0.65) }).prefault({}),
  skyline: z.array(obstacle).default([]),
  horizon: z.array(mapping({ azimuth, elevation: number(-10, 90, 'an elevation in degrees') })).optional(),
  leaves: mapping({ on: date, off: date }).optional(),
  snow: snow.prefault({}),
  sky: word(['perez', 'hay-davies', 'isotropic']).default('perez'),
  calendarYear: wholeNumber(1950, 2050, 'a year').default(2025),
  arrays: z.array(array, { error: () => 'expected a list of arrays, each beginning with "- name:"' }),
  bank,
  inverter: inverter.optional(),
  converter: converter.optional(),
  loads: z.array(load).default([]),
  measuredLoad: measured.optional(),
  events: z.array(event).default([]),
  /** Temperature of the rooms that refrigerators stand in: warmer than outdoors by `above`, heated to `atLeast`. */
  rooms: mapping({
    atLeast: quantity('temperature', between(-40, 50, 'degC')).default(usual['rooms.atLeast'].value),
    above: quantity('temperatureDifference', between(-20, 40, 'K')).default(usual['rooms.above'].value),
  }).prefault({}),
  generator: generator.optional(),
  costs: designCosts.optional(),
  units: word(['metric', 'us']).default('metric'),
};

/** Keys of the site file that are not part of one design. */
export const aroundDesign = ['modules', 'variants', 'sweep', 'size', 'carry', 'costs'];

/** The values of one design of a place, the site file without its variants: what each key allows by itself. */
export const designSchema = mapping(siteShape, aroundDesign);

export type SiteValues = z.output<typeof designSchema>;
