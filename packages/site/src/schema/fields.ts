import { dayOfDate } from '@wintergap/ground';
import { type Dimension, parseQuantity, QuantityError } from '@wintergap/quantity';
import * as z from 'zod';
import { nearestHint, nearestWord } from '../document/nearest-word.js';
import { wordHint } from '../document/trade-words.js';
import { withFacts } from './field-facts.js';

/** What reads a part of the site file. */
export type Schema = z.ZodType;

/** Allowed range of a field, in the unit the quantity is turned into. */
interface Range {
  min?: number;
  max?: number;
  /** The limits as a person would write them, for the message. */
  say: string;
}

/** From one limit to another, both included, in the unit the quantity is turned into. */
export const between = (min: number, max: number, unit: string): Range => ({
  min,
  max,
  say: `${min} ${unit} to ${max} ${unit}`,
});

/** Above zero and up to a limit: beyond it a slip of the pen or of the unit. */
export const upTo = (max: number, unit: string): Range => ({
  min: Number.MIN_VALUE,
  max,
  say: `more than zero and at most ${max} ${unit}`,
});

const within = (value: number, { min = -Infinity, max = Infinity }: Range) => value >= min && value <= max;

/** A unit-bearing text such as `18 ft`, as a number in the canonical unit of its dimension. */
export function quantity(dimension: Dimension, range?: Range) {
  const field = z
    .union([z.string(), z.number()], {
      error: (issue) =>
        `found ${found(issue.input)}, expected ${/^[aeiou]/.test(dimension) ? 'an' : 'a'} ${dimension} with its unit`,
    })
    .transform((found, context) => {
      try {
        const value = parseQuantity(found, dimension);
        if (!range || within(value, range)) return value;
        context.addIssue({ code: 'custom', message: `found ${shortened(String(found))}, expected ${range.say}` });
      } catch (error) {
        if (!(error instanceof QuantityError)) throw error;
        context.addIssue({ code: 'custom', message: error.message });
      }
      return z.NEVER;
    });
  return withFacts(field, { kind: 'quantity', dimension, range: range?.say ?? null });
}

/** A share between 0 and 1, written `0.85` or `85 %`. */
export const fraction = (range: Range = { min: 0, max: 1, say: '0 to 1, or 0 % to 100 %' }) =>
  quantity('fraction', range);

/** A bare number between two limits. */
export function number(min: number, max: number, what: string) {
  const say = `expected ${what} as a bare number from ${min} to ${max}`;
  const field = z
    .number({ error: (issue) => `found ${found(issue.input)}, ${say}${decimalComma(issue.input)}` })
    .refine((value) => value >= min && value <= max, {
      error: (issue) => `found ${found(issue.input)}, ${say}`,
    });
  return withFacts(field, { kind: 'number', min, max, whole: false });
}

/** A whole number between two limits. */
export function wholeNumber(min: number, max: number, what: string) {
  const field = number(min, max, what).refine(Number.isInteger, {
    error: (issue) => `found ${found(issue.input)}, expected ${what} as a whole number`,
  });
  return withFacts(field, { kind: 'number', min, max, whole: true });
}

/** A tilt, degrees from horizontal. */
export const tilt = number(0, 90, 'a tilt in degrees from horizontal');
const azimuthDeg = number(0, 360, 'an azimuth in degrees clockwise from north (south is 180)');

/** An azimuth in degrees clockwise from north, or a point of the compass such as `south` or `SSE`. */
export const azimuth = withFacts(
  z.preprocess((input) => (typeof input === 'string' ? (azimuthOfWord(input) ?? input) : input), azimuthDeg),
  { kind: 'azimuth' },
);

/** A key whose value is read and checked elsewhere. */
export const readElsewhere = z.unknown().optional();

/** An `MM-DD` date, as the day of the year from 0 for 1 January. */
export const date = withFacts(
  z
    .string({ error: (issue) => `found ${found(issue.input)}, expected a date as MM-DD, such as 10-01` })
    .transform((text, context) => {
      const day = dayOfDate(text);
      if (day !== null) return day;
      context.addIssue({
        code: 'custom',
        message: `found "${shortened(text)}", expected a date as MM-DD, such as 10-01`,
      });
      return z.NEVER;
    }),
  { kind: 'date' },
);

/** Hours of day as `[from, to]`, 0 to 24; `[20, 6]` runs past midnight. */
export const hoursOfDay = z.tuple([number(0, 24, 'an hour of day'), number(0, 24, 'an hour of day')], {
  error: (issue) => `found ${found(issue.input)}, expected two hours of day such as [8, 20]`,
});

/** A list of twelve, January first. */
export function twelve<Item extends z.ZodType>(item: Item) {
  return z.array(item).refine((list) => list.length === 12, {
    error: (issue) => `found ${(issue.input as unknown[]).length} values, expected twelve, January first`,
  });
}

/** Unknown keys of one mapping that are told one by one: more of them are no slips of the pen. */
const mostKeysTold = 5;

/**
 * A mapping in which an unknown key is an error that suggests a near known one.
 *
 * @param alsoKnown keys that stand beside these in the file but are read by others
 */
export function mapping<Shape extends z.ZodRawShape>(shape: Shape, alsoKnown: readonly string[] = []) {
  const known = [...new Set([...Object.keys(shape), ...alsoKnown])];
  return z.strictObject(shape, {
    error: (issue) => {
      if (issue.code === 'unrecognized_keys') {
        const keys = issue.keys as string[];
        const told = keys
          .slice(0, mostKeysTold)
          .map(
            (key) =>
              commaAsKey(key, issue.input as Record<string, unknown>) ??
              `unknown key "${shortened(key)}"${nearestHint(key, known) || ';'} Known here: ${known.join(', ')}`,
          );
        if (keys.length > mostKeysTold) told.push(`${keys.length - mostKeysTold} more unknown keys`);
        return told.join('; ');
      }
      return `found ${found(issue.input)}, expected a mapping with the keys ${known.join(', ')}`;
    },
  });
}

/** A number with a decimal comma, told as such: `35,5` is a text. */
function decimalComma(input: unknown): string {
  if (typeof input !== 'string' || !/^[+-]?\d+,\d+$/.test(input)) return '';
  return `; decimals take a point: ${input.replace(',', '.')}`;
}

/** In braces a comma ends a value: `{ power: 1,5 kW }` gives a key `5 kW` without a value. */
function commaAsKey(key: string, mapping: Readonly<Record<string, unknown>>): string | null {
  if (mapping[key] !== null || !/^\d/.test(key)) return null;
  return `found the number "${shortened(key)}" where a key is expected: in braces a comma ends the value before it, and decimals take a point, as in 1.5 kW`;
}

/** One of several mappings told apart by the value of `key`. */
export function oneOf<
  Key extends string,
  Options extends readonly [z.core.$ZodTypeDiscriminable, ...z.core.$ZodTypeDiscriminable[]],
>(key: Key, names: readonly string[], options: Options) {
  return z.discriminatedUnion(key, options, {
    error: (issue) => {
      const mapping = (issue.input ?? {}) as Record<string, unknown>;
      const value = mapping[key];
      const miswritten = value === undefined ? nearestWord(key, Object.keys(mapping)) : null;
      return miswritten === null
        ? `${key} is ${found(value)}, expected one of ${names.join(', ')}${wordHint(value, names)}`
        : `unknown key "${shortened(miswritten)}"${nearestHint(miswritten, [key])} It is one of ${names.join(', ')}`;
    },
  });
}

/** One of a few words. */
export function word<const Words extends readonly [string, ...string[]]>(words: Words) {
  return z.enum(words, {
    error: (issue) => `found ${found(issue.input)}, expected one of ${words.join(', ')}${wordHint(issue.input, words)}`,
  });
}

/** What a terminal would take as an order: control characters, and signs that turn the order of writing. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: it is them that are looked for
const controls = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069]/;

/** A text of one line, not empty. */
function line(most: number) {
  return z
    .string({ error: (issue) => `found ${found(issue.input)}, expected a text` })
    .refine((value) => value.trim() !== '', { error: () => 'found an empty text' })
    .refine((value) => value.length <= most, {
      error: (issue) => `found ${String(issue.input).length} characters, expected at most ${most}`,
    })
    .refine((value) => !controls.test(value), {
      error: (issue) => {
        const [sign = ''] = controls.exec(String(issue.input)) ?? [];
        const code = sign.charCodeAt(0).toString(16).padStart(4, '0').toUpperCase();
        return `found the control character U+${code}, expected a text of one line without any`;
      },
    });
}

/** A name. */
export const text = line(200);

/** The path of a file. */
export const pathOfFile = line(4000);

/** A value as it should appear in a message: short, and recognisable. */
export function found(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'string') return JSON.stringify(shortened(value));
  if (Array.isArray(value) && value.length > 60) return `a list of ${value.length}`;
  return shortened(JSON.stringify(value) ?? String(value));
}

/** The beginning of a text that is too long to be quoted. */
export const shortened = (written: string): string => (written.length > 60 ? `${written.slice(0, 57)}...` : written);

/** The sixteen points of the compass, clockwise from north. */
const compassPoints = [
  'n',
  'nne',
  'ne',
  'ene',
  'e',
  'ese',
  'se',
  'sse',
  's',
  'ssw',
  'sw',
  'wsw',
  'w',
  'wnw',
  'nw',
  'nnw',
];

/** The azimuth that `south`, `SE` or `south-south-west` names, degrees clockwise from north; none for another text. */
function azimuthOfWord(text: string): number | null {
  const letters = text
    .toLowerCase()
    .replace(/north|south|east|west/g, (word) => word[0]!)
    .replace(/[\s-]/g, '');
  const at = compassPoints.indexOf(letters);
  return at < 0 ? null : at * (360 / compassPoints.length);
}
