import { hoursPerYear } from '@wintergap/ground';
import * as z from 'zod';
import { mapping, number, quantity, tilt, twelve, word } from './fields.js';

/** A fall that covers planes up to `wholeUpTo` whole leaves those from `bareFrom` on bare. */
const usual = { wholeUpTo: 35, bareFrom: 85 };

/** Snow on the arrays. */
export const snow = mapping({
  /** Days with fresh snow in each month, for weather that says nothing of snow. */
  days: twelve(number(0, 31, 'snowy days in the month')).optional(),
  /** Whether steep planes shed snow as it falls, are never covered, or are covered whole as flat ones are. */
  cover: word(['usual', 'none', 'full']).optional(),
  /** Tilt up to which a fall covers a plane whole, and from which on it leaves it bare: the site's own experience. */
  wholeUpTo: tilt.default(usual.wholeUpTo),
  bareFrom: tilt.default(usual.bareFrom),
  /** Hours by the clock from the last new snow until somebody has swept. */
  clearing: mapping({ within: quantity('duration', { min: 0, max: hoursPerYear, say: 'zero to a year' }) }).optional(),
  /** `false` is `cover: none` by another name. */
  onArray: z.boolean().optional(),
})
  .refine(({ wholeUpTo, bareFrom }) => bareFrom > wholeUpTo, {
    error: (issue) => {
      const { wholeUpTo, bareFrom } = issue.input as { wholeUpTo: number; bareFrom: number };
      return `found bareFrom ${bareFrom}, expected more than wholeUpTo, ${wholeUpTo}: the tilt from which on snow leaves a plane bare`;
    },
    path: ['bareFrom'],
  })
  .refine(({ cover, onArray }) => onArray !== false || cover === undefined || cover === 'none', {
    error: () => 'onArray: false means cover: none; expected one of the two keys',
    path: ['onArray'],
  })
  .transform(({ cover = 'usual', onArray = true, ...rest }) => ({ ...rest, cover: onArray ? cover : 'none' }));
