/**
 * Raises or lowers values together until they have a wanted sum, each staying between zero and its own ceiling.
 * With u the share of its ceiling that a value has, the odds u / (1 - u) of all values are multiplied by one factor:
 * the order is kept, nothing leaves its range, dull values stay dull and bright ones bright. Plain scaling would push
 * the brightest past the ceiling.
 *
 * Shares are first kept within 0.001 to 0.999, so that every value can move. A sum at or above that of the ceilings
 * gives the ceilings, one at or below zero gives zeros.
 *
 * @param values changed in place, entries `from` to `to` - 1
 * @param ceilings same length; entries at or below zero give zero
 */
export function restoreSum(
  values: Float64Array,
  ceilings: Float64Array,
  from: number,
  to: number,
  wantedSum: number,
): void {
  let ceilingSum = 0;
  for (let i = from; i < to; i++) {
    const ceiling = ceilings[i]!;
    if (ceiling > 0) ceilingSum += ceiling;
    values[i] = ceiling > 0 ? Math.min(0.999, Math.max(0.001, values[i]! / ceiling)) : 0;
  }
  const full = wantedSum >= ceilingSum;
  if (full || wantedSum <= 0) {
    for (let i = from; i < to; i++) values[i] = full && ceilings[i]! > 0 ? ceilings[i]! : 0;
    return;
  }
  // The factor on the odds is p / (1 - p); the sum grows with p from 0 to the sum of the ceilings.
  let low = 0;
  let high = 1;
  let p = 0.5;
  for (let step = 0; step < 100; step++) {
    let sum = 0;
    for (let i = from; i < to; i++) {
      const u = values[i]!;
      if (u > 0) sum += (ceilings[i]! * p * u) / (p * u + (1 - p) * (1 - u));
    }
    const off = sum - wantedSum;
    if (Math.abs(off) < 1e-12 * wantedSum) break;
    if (off > 0) high = p;
    else low = p;
    p = (low + high) / 2;
  }
  for (let i = from; i < to; i++) {
    const u = values[i]!;
    if (u > 0) values[i] = Math.min(ceilings[i]!, (ceilings[i]! * p * u) / (p * u + (1 - p) * (1 - u)));
  }
}
