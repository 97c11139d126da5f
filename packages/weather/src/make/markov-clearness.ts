import { type ClearnessMatrix, clearnessMatrices } from './markov-matrices.js';
import type { RandomStream } from './random.js';

const states = 10;

/** The matrix for a month of this mean clearness, 0 to 1. */
export function matrixFor(monthMean: number): ClearnessMatrix {
  return clearnessMatrices.find((matrix) => monthMean <= matrix.upToMonthMean) ?? clearnessMatrices.at(-1)!;
}

/** State, 0 to 9, of a day's clearness; values outside the matrix's range count as its first or last state. */
export function stateOf(clearness: number, matrix: ClearnessMatrix): number {
  const share = (clearness - matrix.minimum) / (matrix.maximum - matrix.minimum);
  return Math.min(states - 1, Math.max(0, Math.floor(share * states)));
}

/**
 * Draws tomorrow's clearness index from today's: the next state by the row of today's state, then a value evenly
 * within the state.
 *
 * Source: Aguiar, Collares-Pereira & Conde (1988). Rows are normalised, because three printed decimals do not always
 * sum to 1.
 */
export function nextClearness(today: number, monthMean: number, random: RandomStream): number {
  const matrix = matrixFor(monthMean);
  const row = matrix.chance[stateOf(today, matrix)]!;
  let sum = 0;
  for (let state = 0; state < states; state++) sum += row[state]!;
  let rest = random.uniform() * sum;
  let next = 0;
  while (next < states - 1 && rest >= row[next]!) rest -= row[next++]!;
  const width = (matrix.maximum - matrix.minimum) / states;
  return matrix.minimum + (next + random.uniform()) * width;
}

/**
 * A year of daily clearness indices that wander as measured days do. The mean of a drawn month is near, not at, the
 * mean it was drawn for. The year closes: December is drawn twice, the first time only to find the weather in which
 * January begins.
 *
 * @param monthMeans mean clearness of the twelve months, 0 to 1
 * @param monthOfDay month, 0 to 11, of each of the 365 days
 */
export function wanderingClearness(
  monthMeans: readonly number[],
  monthOfDay: ArrayLike<number>,
  random: RandomStream,
): Float64Array {
  const days = new Float64Array(monthOfDay.length);
  let today = monthMeans[11]!;
  for (let day = 0; day < 31; day++) today = nextClearness(today, monthMeans[11]!, random);
  for (let day = 0; day < days.length; day++) {
    today = nextClearness(today, monthMeans[monthOfDay[day]!]!, random);
    days[day] = today;
  }
  return days;
}
