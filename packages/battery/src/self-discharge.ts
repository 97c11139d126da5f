import { coldestC, hottestC } from './lead-acid/grid.js';

const hoursPerMonth = 730;

/**
 * Self-discharge per hour as a fraction of the charge held, one entry per degC from -50 to 60, doubling for each 10 K
 * above 25 degC and halving below (common practice, no source). Makers state it of a full bank; the reactions at the
 * plates go with what is left to react, so that a bank standing idle falls ever more slowly.
 */
export function selfDischargeTable(perMonthAt25C: number): Float64Array {
  const table = new Float64Array(hottestC - coldestC + 1);
  for (let k = 0; k < table.length; k++) {
    table[k] = (perMonthAt25C / hoursPerMonth) * 2 ** ((coldestC + k - 25) / 10);
  }
  return table;
}
