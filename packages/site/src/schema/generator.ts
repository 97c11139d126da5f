import * as z from 'zod';
import { between, found, fraction, mapping, number, oneOf, quantity, upTo, wholeNumber, word } from './fields.js';
import { pricedEngine } from './price.js';
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
      power: quantity('power', between(1, 1e7, 'W')),
      charger: mapping({
        power: quantity('power', between(1, 1e7, 'W')),
        efficiency: fraction({ min: 0.3, max: 1, say: '0.3 to 1' }).default(
          usual['generator.output.charger.efficiency'].value,
        ),
      }),
    }),
    mapping({
      bus: z.literal('dc'),
      power: quantity('power', between(1, 1e7, 'W')),
      /** What rectifier, regulator and cable pass on of the alternator's power. */
      efficiency: fraction({ min: 0.3, max: 1, say: '0.3 to 1' }).default(usual['generator.output.efficiency'].value),
    }),
  ],
);

const start = mapping({
  /** A controller starts it below this state of charge, */
  below: fraction().optional(),
  /** or when the bank's voltage has stayed below a level for a time, */
  voltageBelow: quantity('voltage', between(1, 2000, 'V')).optional(),
  heldFor: quantity('duration', between(0, 168, 'h')).default(0.25),
  /** or a person who looks at these hours of day and starts it below a state of charge, */
  byHand: mapping({ below: fraction(), at: z.array(wholeNumber(0, 23, 'an hour of day')).min(1) }).optional(),
  /** or it starts at a higher state of charge because tomorrow looks dull. */
  beforeDullDay: mapping({
    below: fraction(),
    /** A day with less global irradiation than this is dull. */
    dullBelow: quantity('irradiation', upTo(50, 'kWh/m2')),
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
    atFull: quantity('volumeFlow', upTo(1e6, 'L/h')),
    idle: quantity('volumeFlow', between(0, 1e6, 'L/h')),
    price: quantity('pricePerVolume', between(0, 1e6, '/L')).optional(),
    /** What the place can store, for the chance of running out. */
    stored: quantity('volume', upTo(1e9, 'L')).optional(),
  }),
  start,
  stop,
  minimumRun: quantity('duration', between(0, 168, 'h')).default(0),
  warmUp: quantity('duration', between(0, 2, 'h')).default(usual['generator.warmUp'].value),
  coolDown: quantity('duration', between(0, 2, 'h')).default(usual['generator.coolDown'].value),
  minimumLoad: fraction().optional(),
  derate: z.boolean().default(true),
  exercise: mapping({
    every: wholeNumber(1, 366, 'days'),
    lasts: quantity('duration', { min: 1 / 60, max: 10, say: '1 min to 10 h' }),
    at: wholeNumber(0, 23, 'an hour of day').default(10),
  }).optional(),
  failsToStart: mapping({
    chance: fraction(),
    retryAfter: quantity('duration', between(0.05, 720, 'h')).default(1),
    seed: wholeNumber(0, 2 ** 31, 'a seed').default(1),
  }).optional(),
  oil: mapping({ every: quantity('duration', upTo(1e6, 'h')), price: number(0, 1e9, 'a price').optional() }).optional(),
  overhaul: mapping({
    every: quantity('duration', upTo(1e6, 'h')),
    price: number(0, 1e9, 'a price').optional(),
  }).optional(),
  ...pricedEngine,
});

export type SiteGenerator = z.output<typeof generator>;
