/** The first and the last busy place of a round, such as the weeks of a year, outside its longest quiet run. */
export function longestGap(busy: readonly boolean[]): { from: number; to: number } {
  const count = busy.length;
  let best = { from: 0, to: count - 1, quiet: 0 };
  for (let at = 0; at < count; at++) {
    if (!busy[at]) continue;
    let quiet = 0;
    while (quiet < count && !busy[(at - 1 - quiet + count) % count]) quiet++;
    if (quiet > best.quiet) best = { from: at, to: (at - 1 - quiet + 2 * count) % count, quiet };
  }
  return { from: best.from, to: best.to };
}
