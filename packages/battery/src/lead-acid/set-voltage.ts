/** Controllers stop compensating here; common practice, no source. */
const compensatedFromC = -20;
const compensatedToC = 50;

/** Set voltage of a cell at a temperature, V, from the one at 25 degC. */
export function compensatedCellV(at25CellV: number, compensationVPerK: number, tempC: number): number {
  let t = tempC;
  if (t < compensatedFromC) t = compensatedFromC;
  else if (t > compensatedToC) t = compensatedToC;
  return at25CellV + compensationVPerK * (t - 25);
}
