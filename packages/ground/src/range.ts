/**
 * A value outside what it may be. The message says what, what is allowed and what came; `key` is the path of keys that
 * leads to it, as far as it is known where the value is checked, such as `module.vmp`.
 */
export class OutOfRangeError extends RangeError {
  override readonly name = 'OutOfRangeError';

  readonly key: string | undefined;

  constructor(message: string, key?: string) {
    super(message);
    this.key = key;
  }
}

/** Throws unless `value` is a finite number from `least` to `most`, both included; `Infinity` as `most` means no bound. */
export function mustLie(what: string, value: number, least: number, most: number): void {
  if (value >= least && value <= most && Number.isFinite(value)) return;
  const allowed = isNoBound(most) ? `${least} or more` : `${least} to ${most}`;
  throw new OutOfRangeError(`${what} must be ${allowed}, got ${value}`);
}

/** Throws unless `value` is a finite number above `least`. */
export function mustBeAbove(what: string, value: number, least: number): void {
  if (!(value > least && value < Number.POSITIVE_INFINITY)) {
    throw new OutOfRangeError(`${what} must be above ${least}, got ${value}`);
  }
}

/** Throws unless `share` is above 0 and no more than 1: an efficiency, a part of a whole that is there. */
export function mustBeShare(what: string, share: number): void {
  if (!(share > 0 && share <= 1)) throw new OutOfRangeError(`${what} must be above 0 and up to 1, got ${share}`);
}

/** Throws unless `value` is a whole number from `least` to `most`, both included; `Infinity` as `most` means no bound. */
export function mustBeWhole(what: string, value: number, least: number, most: number): void {
  if (Number.isInteger(value) && value >= least && value <= most) return;
  const allowed = isNoBound(most) ? `, ${least} or more` : ` from ${least} to ${most}`;
  throw new OutOfRangeError(`${what} must be a whole number${allowed}, got ${value}`);
}

/** Throws unless `series` holds `length` finite numbers from `least` to `most`, both included. */
export function mustHold(what: string, series: ArrayLike<number>, length: number, least: number, most: number): void {
  if (series.length !== length) {
    throw new OutOfRangeError(`${what} must hold ${length} numbers, got ${series.length}`);
  }
  for (let i = 0; i < length; i++) {
    const value = series[i]!;
    if (!(value >= least && value <= most)) mustLie(`${what} at index ${i}`, value, least, most);
  }
}

const isNoBound = (most: number): boolean => most >= Number.MAX_SAFE_INTEGER;
