import type { Dimension } from '@wintergap/quantity';
import type * as z from 'zod';

/** What a field takes, for those who describe it: the schema itself knows only that it reads a text or a number. */
export type FieldFacts =
  | { kind: 'quantity'; dimension: Dimension; range: string | null }
  | { kind: 'number'; min: number; max: number; whole: boolean }
  | { kind: 'said'; says: string }
  | { kind: 'azimuth' }
  | { kind: 'date' };

const facts = new WeakMap<object, FieldFacts>();

/** Notes what a field takes. */
export function withFacts<Field extends z.ZodType>(field: Field, of: FieldFacts): Field {
  facts.set(field, of);
  return field;
}

/** What a field takes, if that was noted. */
export const factsOf = (field: object): FieldFacts | undefined => facts.get(field);
