import { checkSeries } from '../check-input.js';

/**
 * Demand spread evenly over each day, for a bank that carries the hours: converter out then runs long and small.
 * It holds when the bank can hold a day of this demand and is checked by nobody here.
 *
 * @param demandWh hourly demand, Wh; the last day may be shorter
 */
export function dailyMeanDemand(demandWh: ArrayLike<number>): Float64Array {
  checkSeries('demandWh', demandWh, 'demandWh', demandWh);
  const smooth = new Float64Array(demandWh.length);
  for (let start = 0; start < smooth.length; start += 24) {
    const end = Math.min(start + 24, smooth.length);
    let sum = 0;
    for (let h = start; h < end; h++) sum += demandWh[h]!;
    smooth.fill(sum / (end - start), start, end);
  }
  return smooth;
}
