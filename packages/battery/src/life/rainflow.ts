/** One counted cycle: `count` is 1 for a full cycle and 0.5 for a half. */
export interface RainflowCycle {
  range: number;
  mean: number;
  count: number;
}

/**
 * Rainflow counting, ASTM E1049-85 section 5.4.4. Takes any series; only its peaks and valleys count.
 *
 * @returns cycles in the order they close, then the half cycles left over
 */
export function rainflow(series: ArrayLike<number>): RainflowCycle[] {
  const cycles: RainflowCycle[] = [];
  const turns = turningPoints(series);
  // A stack of turning points; its first is the starting point S of the standard.
  const open: number[] = [];
  for (const turn of turns) {
    open.push(turn);
    while (open.length >= 3) {
      const a = open[open.length - 3]!;
      const b = open[open.length - 2]!;
      const c = open[open.length - 1]!;
      const y = Math.abs(b - a);
      if (Math.abs(c - b) < y) break;
      if (open.length === 3) {
        cycles.push({ range: y, mean: (a + b) / 2, count: 0.5 });
        open.shift();
      } else {
        cycles.push({ range: y, mean: (a + b) / 2, count: 1 });
        open.splice(open.length - 3, 2);
      }
    }
  }
  for (let k = 1; k < open.length; k++) {
    const a = open[k - 1]!;
    const b = open[k]!;
    cycles.push({ range: Math.abs(b - a), mean: (a + b) / 2, count: 0.5 });
  }
  return cycles;
}

/** First and last value and every reversal between; plateaus count once. */
function turningPoints(series: ArrayLike<number>): number[] {
  const turns: number[] = [];
  for (let i = 0; i < series.length; i++) {
    const value = series[i]!;
    const n = turns.length;
    if (n > 0 && value === turns[n - 1]) continue;
    if (n >= 2 && value > turns[n - 1]! === turns[n - 1]! > turns[n - 2]!) turns[n - 1] = value;
    else turns.push(value);
  }
  return turns;
}
