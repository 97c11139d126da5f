import { hoursPerYear } from '@wintergap/ground';
import * as z from 'zod';
import { fileName } from '../named-file.js';
import {
  between,
  date,
  fraction,
  hoursOfDay,
  mapping,
  number,
  quantity,
  text,
  upTo,
  wholeNumber,
  word,
} from './fields.js';
import { priced } from './price.js';
import { usual } from './usual-values.js';

/** No place beyond the power line has a thing larger than 10 MW. */
const mostPowerW = 1e7;

export const inverter = mapping({
  power: quantity('power', between(1, mostPowerW, 'W')),
  surge: quantity('power', between(1, mostPowerW, 'W')).optional(),
  idle: quantity('power', between(0, mostPowerW, 'W')),
  /** Highest efficiency of its curve, as makers quote it. */
  efficiency: fraction({ min: 0.5, max: 1, say: '0.5 to 1' }),
  search: mapping({
    idle: quantity('power', between(0, mostPowerW, 'W')),
    below: quantity('power', upTo(mostPowerW, 'W')),
  }).optional(),
  ...priced,
});

export const converter = mapping({
  efficiency: fraction({ min: 0.3, max: 1, say: '0.3 to 1' }),
  idle: quantity('power', between(0, 1e6, 'W')).default(usual['converter.idle'].value),
});

/** Several windows of hours, or one. */
const hours = z.union([hoursOfDay.transform((window) => [window]), z.array(hoursOfDay)]);

const period = mapping({ from: date, to: date });
const periods = z.union([period.transform((one) => [one]), z.array(period)]);

const when = mapping({
  hours: hours.optional(),
  days: word(['all', 'weekdays', 'weekends']).optional(),
  season: periods.optional(),
  /** In the cold only: not at all above `outdoorBelow`; with `fullAt` more with every degree, all the time there. */
  outdoorBelow: quantity('temperature', between(-60, 60, 'degC')).optional(),
  fullAt: quantity('temperature', between(-90, 60, 'degC')).optional(),
  /** Only while the sun is down. */
  dark: z.literal(true).optional(),
  /** Longer in a warm room: by `perK` of its running time for every kelvin above `roomAt`. */
  roomAt: quantity('temperature', between(-60, 60, 'degC')).optional(),
  perK: fraction().default(0.03),
  /** Multiplied while guests are there, or 0 while the house is empty. */
  guests: z.array(mapping({ from: date, to: date, times: number(0, 100, 'how many times as much') })).optional(),
}).refine(
  (rule) => [rule.outdoorBelow, rule.dark, rule.roomAt, rule.guests].filter((key) => key !== undefined).length <= 1,
  { error: () => 'only one of outdoorBelow, dark, roomAt and guests can drive a load; split it in two' },
);

export const load = mapping({
  name: text,
  power: quantity('power', between(0, mostPowerW, 'W')),
  count: wholeNumber(1, 10000, 'how many of them').default(1),
  bus: word(['ac', 'dc']),
  /** Share of the allowed hours in which it runs. */
  runs: fraction().optional(),
  /** Or the time it runs on a day on which it runs. */
  perDay: quantity('duration', { min: 0, max: 24, say: '0 h to 24 h' }).optional(),
  when: when.prefault({}),
  standby: quantity('power', between(0, mostPowerW, 'W')).default(0),
  surge: quantity('power', between(0, mostPowerW, 'W')).optional(),
  /** Dates between which it is unplugged. */
  off: periods.optional(),
});

export const event = mapping({
  name: text,
  on: z.union([z.literal('dullest spell'), date]),
  at: number(0, 24, 'an hour of day').default(0),
  lasts: quantity('duration', { min: 1 / 60, max: hoursPerYear, say: '1 min to 8760 h' }),
  energy: quantity('energy', between(0, 1e11, 'Wh')).optional(),
  power: quantity('power', between(0, mostPowerW, 'W')).optional(),
  days: wholeNumber(1, 365, 'days in a row').default(1),
  bus: word(['ac', 'dc']).default('ac'),
  /** Dates between which it is left out. */
  off: periods.optional(),
});

export const measured = mapping({
  file: fileName,
  /** Scales the whole table to this yearly energy. */
  yearly: quantity('energy', upTo(1e11, 'Wh')).optional(),
});

export type SiteLoad = z.output<typeof load>;
export type SiteEvent = z.output<typeof event>;
export type SiteInverter = z.output<typeof inverter>;
export type SiteMeasured = z.output<typeof measured>;
