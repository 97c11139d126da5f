/** @throws RangeError unless `value` is a finite number above `least` */
export function checkAbove(name: string, value: number, least: number): void {
  if (!(value > least && value < Number.POSITIVE_INFINITY)) {
    throw new RangeError(`${name} must be above ${least}, got ${value}`);
  }
}

/** @throws RangeError unless `share` is above 0 and no more than 1 */
export function checkShare(name: string, share: number): void {
  if (!(share > 0 && share <= 1)) throw new RangeError(`${name} must be above 0 and up to 1, got ${share}`);
}
