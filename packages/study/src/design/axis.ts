import { OutOfRangeError } from '@wintergap/ground';
/** One thing that differs between the designs of a sweep, with the values it takes. */
export interface DesignAxis {
  /** Where the value stands in the site file, such as `bank.capacity`; or `variant`. */
  path: string;
  /** The values as they would be written in the site file; for `variant` the names, `base` for the base design. */
  values: readonly unknown[];
}

/** The axis that chooses a variant instead of changing a value. */
export const variantAxis = 'variant';

/** What an axis may list at most. */
export const mostValues = 10_000;

const rangeText = /^(-?\d+)\.\.(-?\d+)(?:\/(\d+))?(?:\s+(\S.*))?$/;

/**
 * The values that a written item stands for: `2..8` is 2, 3 ... 8; `2..8/2` is 2, 4, 6, 8; a unit behind it goes with
 * every value, so that `500..1000/250 Ah` is 500 Ah, 750 Ah, 1000 Ah. Anything else stands for itself.
 *
 * @throws OutOfRangeError when a range is empty, never ends or is too long
 */
export function expandRange(written: unknown): unknown[] {
  const match = typeof written === 'string' ? rangeText.exec(written.trim()) : null;
  if (!match) return [written];
  const [from, to, step] = [Number(match[1]), Number(match[2]), Number(match[3] ?? 1)];
  if (step === 0) throw new OutOfRangeError(`found "${written}", expected a step of 1 or more`);
  if (to < from)
    throw new OutOfRangeError(`found "${written}", expected the smaller number first, such as ${to}..${from}`);
  if ((to - from) / step >= mostValues) {
    throw new OutOfRangeError(
      `found "${written}", expected at most ${mostValues} values; take a larger step: ${from}..${to}/STEP`,
    );
  }
  const values: unknown[] = [];
  for (let value = from; value <= to; value += step) values.push(match[4] ? `${value} ${match[4]}` : value);
  return values;
}

/** Keys of the site file that come before the balance, from what costs most to compute anew to what costs least. */
const costRanks: readonly (readonly string[])[] = [
  ['weather', 'place', 'calendarYear'],
  [variantAxis],
  ['ground', 'skyline', 'horizon', 'leaves', 'snow', 'sky'],
  ['bank.voltage', 'bank.chemistry'],
  ['arrays'],
  ['rooms', 'loads', 'measuredLoad', 'events', 'inverter', 'converter'],
];

/**
 * Axes in the order in which designs are counted, outermost first: what changes the sky, the mount or the array outside,
 * bank and generator inside, so that neighbouring designs share all that is prepared before the balance. Axes of one kind
 * stay in the order of the file.
 */
export function outermostFirst(axes: readonly DesignAxis[]): DesignAxis[] {
  return [...axes].sort((a, b) => costRank(a.path) - costRank(b.path));
}

function costRank(path: string): number {
  const rank = costRanks.findIndex((starts) => starts.some((start) => path === start || path.startsWith(`${start}.`)));
  return rank < 0 ? costRanks.length : rank;
}
