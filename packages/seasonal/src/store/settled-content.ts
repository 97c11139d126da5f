/**
 * Content at the start of the year that the store comes back to at its end.
 *
 * One hour turns content c into max(0, min(capacity, (1 - loss) c + supply - draw)). A chain of such steps is again of
 * the form clamp(a c + b, low, high), so the whole year is four numbers, found in one pass, and the settled content is
 * their fixed point. Nothing is repeated until it converges: a store that gains a little every year would take many.
 *
 * Without standing loss and with supply exactly equal to draw any content in range is settled: `startWh` is kept then.
 *
 * @returns Wh at the store
 */
export function settledContent(
  supplyWh: ArrayLike<number>,
  drawWh: ArrayLike<number>,
  capacityWh: number,
  lossPerH: number,
  startWh: number,
): number {
  const kept = 1 - lossPerH;
  let a = 1;
  let b = 0;
  let low = 0;
  let high = capacityWh;
  for (let h = 0; h < supplyWh.length; h++) {
    const net = supplyWh[h]! - drawWh[h]!;
    a *= kept;
    b = b * kept + net;
    low = Math.min(capacityWh, Math.max(0, low * kept + net));
    high = Math.min(capacityWh, Math.max(0, high * kept + net));
  }
  const target = a < 1 ? b / (1 - a) : b > 0 ? high : b < 0 ? low : startWh;
  return Math.min(high, Math.max(low, target));
}
