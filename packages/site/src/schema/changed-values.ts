import type * as z from 'zod';
import { checkDesign } from '../rules/design.js';
import { designSchema, type SiteValues } from './design.js';

/** A design as written, and the values that it has been found to have. */
export interface KnownDesign {
  written: Readonly<Record<string, unknown>>;
  values: SiteValues;
}

const sections = Object.entries(designSchema.shape) as [string, z.ZodType][];

/**
 * The values of a design that has most of its sections from another, as a variant has from the base: what was read there
 * is not read again.
 *
 * @returns null when something is wrong with it; the schema of a whole design then says what
 */
export function changedValues(written: Readonly<Record<string, unknown>>, known: KnownDesign): SiteValues | null {
  const strange = Object.keys(written).some((key) => !Object.hasOwn(designSchema.shape, key));
  if (strange) return null;
  const values: Record<string, unknown> = {};
  for (const [key, schema] of sections) {
    if (isSame(written[key], known.written[key])) {
      if (key in known.values) values[key] = known.values[key as keyof SiteValues];
      continue;
    }
    const result = schema.safeParse(written[key], { jitless: true });
    if (!result.success) return null;
    if (result.data !== undefined) values[key] = result.data;
  }
  let isRight = true;
  const context = { addIssue: () => (isRight = false) };
  checkDesign(values as SiteValues, context as unknown as z.core.$RefinementCtx<SiteValues>);
  return isRight ? (values as SiteValues) : null;
}

/** The very same values; lists may have been put together anew. */
const isSame = (one: unknown, other: unknown): boolean =>
  one === other ||
  (Array.isArray(one) &&
    Array.isArray(other) &&
    one.length === other.length &&
    one.every((item, i) => item === other[i]));
