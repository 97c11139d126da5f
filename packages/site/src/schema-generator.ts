import * as z from 'zod';
import {
  found,
  fraction,
  mapping,
  notNegative,
  number,
  oneOf,
  positive,
  quantity,
  wholeNumber,
  word,
} from './fields.js';
import { usual } from './usual-values.js';

const wholeHour = wholeNumber(0, 24, 'a whole hour of day');
const wholeHours = z.tuple([wholeHour, wholeHour], {
  error: (issue) => `found ${found(issue.input)}, expected two whole hours of day such as [8, 20]`,
});

const output = oneOf(
  'bus',
  ['ac', 'dc'],
  [
    mapping({
      bus: z.literal('ac'),
      power: quantity('power', positive),
      charger: mapping({
        power: quantity('power', positive),
        efficiency: fraction({ min: 0.3, max: 1, say: '0.3 to 1' }).default(
          usual['generator.output.charger.efficiency'].value,
        ),
      }),
    }),
    mapping({
      bus: z.literal('dc'),
      power: quantity('power', positive),
      /** What rectifier, regulator and cable pass on of the alternator's power. */
      efficiency: fraction({ min: 0.3, max: 1, say: '0.3 to 1' }).default(usual['generator.output.efficiency'].value),
    }),
  ],
);

const start = mapping({
  /** A controller starts it below this state of charge, */
  below: fraction().optional(),
  /** or when the bank's voltage has stayed below a level for a time, */
  voltageBelow: quantity('voltage', positive).optional(),
  heldFor: quantity('duration', notNegative).default(0.25),
  /** or a person who looks at these hours of day and starts it below a state of charge, */
  byHand: mapping({ below: fraction(), at: z.array(wholeNumber(0, 23, 'an hour of day')).min(1) }).optional(),
  /** or it starts at a higher state of charge because tomorrow looks dull. */
  beforeDullDay: mapping({
    below: fraction(),
    /** A day with less global irradiation than this is dull. */
    dullBelow: quantity('irradiation', positive),
    forecast: word(['perfect', 'persistence']).default('persistence'),
    at: z
      .array(wholeNumber(0, 23, 'an hour of day'))
      .min(1)
      .optional(),
  }).optional(),
  /** Hours in which people accept the noise. */
  between: wholeHours.optional(),
  days: word(['all', 'weekdays', 'weekends']).default('all'),
  months: z.array(wholeNumber(1, 12, 'a month')).optional(),
  /** Whether a run ends when those hours do. */
  endsRun: z.boolean().default(true),
});

const stop = mapping({
  above: fraction().optional(),
  /** Stop when the bank no longer takes all that the engine or charger gives. */
  atBulkEnd: z.boolean().default(false),
  fullEvery: wholeNumber(1, 366, 'days').optional(),
});

export const generator = mapping({
  output,
  fuel: mapping({
    kind: word(['petrol', 'diesel', 'propane']),
    atFull: quantity('volumeFlow', positive),
    idle: quantity('volumeFlow', notNegative),
    price: quantity('pricePerVolume', notNegative).optional(),
    /** What the place can store, for the chance of running out. */
    stored: quantity('volume', positive).optional(),
  }),
  start,
  stop,
  minimumRun: quantity('duration', notNegative).default(0),
  warmUp: quantity('duration', notNegative).default(usual['generator.warmUp'].value),
  coolDown: quantity('duration', notNegative).default(usual['generator.coolDown'].value),
  minimumLoad: fraction().optional(),
  derate: z.boolean().default(true),
  exercise: mapping({
    every: wholeNumber(1, 366, 'days'),
    lasts: quantity('duration', positive),
    at: wholeNumber(0, 23, 'an hour of day').default(10),
  }).optional(),
  failsToStart: mapping({
    chance: fraction(),
    retryAfter: quantity('duration', positive).default(1),
    seed: wholeNumber(0, 2 ** 31, 'a seed').default(1),
  }).optional(),
  oil: mapping({ every: quantity('duration', positive), price: number(0, 1e9, 'a price').optional() }).optional(),
  overhaul: mapping({ every: quantity('duration', positive), price: number(0, 1e9, 'a price').optional() }).optional(),
});

export type SiteGenerator = z.output<typeof generator>;
