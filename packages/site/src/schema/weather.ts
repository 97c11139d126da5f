import * as z from 'zod';
import { fileName, type NamedFile } from '../named-file.js';
import { between, date, fraction, mapping, number, quantity, twelve, wholeNumber } from './fields.js';

/** Weather from twelve means, January first. */
const months = mapping({
  /** Daily global irradiation on the horizontal, mean of the month. */
  irradiation: twelve(quantity('irradiation', between(0, 12, 'kWh/m2'))).optional(),
  /** Or the clearness index. */
  clearness: twelve(fraction()).optional(),
  air: twelve(quantity('temperature', between(-70, 50, 'degC'))),
  /** Mean daily extremes. */
  airMin: twelve(quantity('temperature', between(-80, 50, 'degC'))).optional(),
  airMax: twelve(quantity('temperature', between(-70, 60, 'degC'))).optional(),
  wind: twelve(quantity('speed', between(0, 30, 'm/s'))).optional(),
  /** Days with snowfall. */
  snowyDays: twelve(number(0, 31, 'snowy days in the month')).optional(),
  /** Nobody has looked these means up: every answer says so. */
  guessed: z.boolean().optional(),
}).refine((means) => (means.irradiation === undefined) !== (means.clearness === undefined), {
  error: () => 'expected either irradiation, twelve daily means such as 1.4 kWh/m2, or clearness, twelve fractions',
});

/** What mends a file whose clock is not local standard time. */
const clock = mapping({
  /** Added to the file's times: `-30 min` when its sun is half an hour late. */
  shift: quantity('duration', { min: -24, max: 24, say: '-24 h to 24 h' }).default(0),
  /** The dates between which the file's clock is an hour ahead. */
  summerTime: mapping({ from: date, to: date }).optional(),
});

/** Keys of weather that comes from files. */
const ofFiles = {
  moveTemperature: z.boolean().default(false),
  clock: clock.optional(),
  /** Goes on with weather that is rejected. */
  accepted: z.boolean().default(false),
};

export const weather = z.union(
  [
    fileName.transform((file) => ({
      file,
      moveTemperature: false,
      otherYears: undefined,
      clock: undefined,
      accepted: false,
    })),
    mapping({
      file: fileName,
      /** Further real years of the same place, for the outlook. */
      otherYears: z.array(fileName).optional(),
      ...ofFiles,
    }),
    /** Real years: files by a pattern such as "ridge-*.csv", a folder, or a file that holds several. */
    mapping({
      years: z.union([fileName, z.array(fileName).min(1)], {
        error: () => 'expected a file, a folder or a pattern such as "ridge-*.csv", or a list of them',
      }),
      /** Calendar years that are not used, as they are broken. */
      leaveOut: z.array(wholeNumber(1800, 2200, 'a calendar year')).default([]),
      ...ofFiles,
    }).transform(({ years, ...rest }) => ({
      ...rest,
      /** Found when the site file is read: the first of the years, and the others. */
      file: [years].flat()[0]!,
      otherYears: undefined as NamedFile[] | undefined,
      years: [years].flat(),
    })),
    mapping({ months, seed: wholeNumber(0, 2 ** 31, 'a seed').default(1) }),
  ],
  {
    error: () =>
      'expected a weather file, { file: ... }, { years: ... } or { months: { irradiation: [...], air: [...] } }',
  },
);
