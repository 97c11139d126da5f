import * as z from 'zod';
import { expandRange, mostValues } from './axis.js';

/** The values of one axis: a value, a range such as `2..8`, or a list of both; each value once. */
const axisValues = z.unknown().transform((written, context) => {
  const items = Array.isArray(written) ? written : [written];
  const values = items.flatMap((item, i) => {
    try {
      return expandRange(item);
    } catch (error) {
      context.addIssue({ code: 'custom', path: Array.isArray(written) ? [i] : [], message: (error as Error).message });
      return [];
    }
  });
  const complain = (message: string) => context.addIssue({ code: 'custom', message });
  if (items.length === 0 || written === null) complain('found no values, expected a list or a range such as 2..8');
  if (values.length > mostValues) complain(`found ${values.length} values, expected at most ${mostValues}`);
  const seen = new Set<string>();
  for (const value of values) {
    const text = JSON.stringify(value);
    if (seen.has(text)) complain(`${text} is there twice; each value makes its own designs`);
    seen.add(text);
  }
  return values;
});

/**
 * The part of the site file that says which designs there are: by path, the values that it takes.
 *
 * @param example what such a section looks like, for the message when there is none
 */
export const designRanges = (example: string): z.ZodType<Record<string, unknown[]>> =>
  z
    .record(z.string(), axisValues, { error: () => `expected paths with their values, such as ${example}` })
    .refine((axes) => Object.keys(axes).length > 0, { error: () => `found no ranges, expected such as ${example}` });
