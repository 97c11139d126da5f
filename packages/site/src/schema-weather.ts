import * as z from 'zod';
import { fraction, mapping, notNegative, number, quantity, twelve, wholeNumber } from './fields.js';
import { fileName } from './named-file.js';

/** Weather from twelve means, January first. */
const months = mapping({
  /** Daily global irradiation on the horizontal, mean of the month. */
  irradiation: twelve(quantity('irradiation', notNegative)).optional(),
  /** Or the clearness index. */
  clearness: twelve(fraction()).optional(),
  air: twelve(quantity('temperature')),
  /** Mean daily extremes. */
  airMin: twelve(quantity('temperature')).optional(),
  airMax: twelve(quantity('temperature')).optional(),
  wind: twelve(quantity('speed', notNegative)).optional(),
  /** Days with snowfall. */
  snowyDays: twelve(number(0, 31, 'snowy days in the month')).optional(),
}).refine((means) => (means.irradiation === undefined) !== (means.clearness === undefined), {
  error: () => 'expected either irradiation, twelve daily means such as 1.4 kWh/m2, or clearness, twelve fractions',
});

/** Keys of weather that comes from files. */
const ofFiles = {
  moveTemperature: z.boolean().default(false),
  /** Goes on with weather that is rejected. */
  accepted: z.boolean().default(false),
};

export const weather = z.union(
  [
    fileName.transform((file) => ({
      file,
      moveTemperature: false,
      otherYears: undefined,
      accepted: false,
    })),
    mapping({
      file: fileName,
      /** Further real years of the same place, for the outlook. */
      otherYears: z.array(fileName).optional(),
      ...ofFiles,
    }),
    mapping({ months, seed: wholeNumber(0, 2 ** 31, 'a seed').default(1) }),
  ],
  { error: () => 'expected a weather file, { file: ... } or { months: { irradiation: [...], air: [...] } }' },
);
