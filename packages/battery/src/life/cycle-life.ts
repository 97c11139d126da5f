import { mustBeAbove, mustBeShare, OutOfRangeError } from '@wintergap/ground';

/** One line of a maker's table: cycles to 80 % capacity when every cycle goes this deep (fraction of capacity). */
export interface CyclesAtDepth {
  depth: number;
  cycles: number;
}

/**
 * Cycles a bank survives at a depth, by straight lines between the table's points in log-log; beyond either end the
 * last slope goes on. The table must rise in depth and fall in cycles.
 */
export function cyclesAtDepth(depth: number, table: readonly CyclesAtDepth[]): number {
  if (!(depth > 0)) return Number.POSITIVE_INFINITY;
  let k = 1;
  while (k < table.length - 1 && table[k]!.depth < depth) k++;
  const a = table[k - 1]!;
  const b = table[k]!;
  const slope = Math.log(b.cycles / a.cycles) / Math.log(b.depth / a.depth);
  return a.cycles * (depth / a.depth) ** slope;
}

/** @throws OutOfRangeError unless the table has two or more points, deeper ones with fewer cycles */
export function checkCycleTable(table: readonly CyclesAtDepth[]): void {
  if (table.length < 2) throw new OutOfRangeError(`cyclesByDepth must have 2 or more points, got ${table.length}`);
  for (let k = 0; k < table.length; k++) {
    const { depth, cycles } = table[k]!;
    mustBeShare('cyclesByDepth depth', depth);
    mustBeAbove('cyclesByDepth cycles', cycles, 0);
    if (k > 0 && !(depth > table[k - 1]!.depth && cycles < table[k - 1]!.cycles)) {
      throw new OutOfRangeError('cyclesByDepth must go from shallow to deep with ever fewer cycles');
    }
  }
}
