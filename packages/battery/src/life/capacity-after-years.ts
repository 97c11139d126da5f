import { mustLie } from '@wintergap/ground';

/** No bank is counted below this share of its labelled capacity; by then it has been replaced. */
const leastCapacity = 0.2;

/**
 * Share of the labelled capacity left after some years, when each uses the given share of the life to 80 % capacity:
 * a straight line, 1 - 0.2 x life used. Real banks hold on longer and then fall faster.
 *
 * @param lifeUsedPerYear cycle and calendar life used in a year together (see `wearOfYear`)
 */
export function capacityAfterYears(years: number, lifeUsedPerYear: number): number {
  mustLie('years', years, 0, Number.POSITIVE_INFINITY);
  mustLie('lifeUsedPerYear', lifeUsedPerYear, 0, Number.POSITIVE_INFINITY);
  return Math.max(leastCapacity, 1 - 0.2 * years * lifeUsedPerYear);
}
