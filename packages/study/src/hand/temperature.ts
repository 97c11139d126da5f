import { mustLie } from '@wintergap/ground';

/**
 * How much larger a lead-acid bank must be in the cold, against 25 degC.
 *
 * IEEE 485, Table 1 (vented cells, specific gravity 1.215), degF and factor; from memory.
 */
const table: readonly (readonly [tempF: number, factor: number])[] = [
  [25, 1.52],
  [30, 1.43],
  [35, 1.35],
  [40, 1.3],
  [45, 1.25],
  [50, 1.19],
  [55, 1.15],
  [60, 1.11],
  [65, 1.08],
  [70, 1.04],
  [77, 1],
  [80, 0.98],
  [85, 0.96],
  [90, 0.94],
  [100, 0.91],
  [110, 0.88],
  [120, 0.86],
];

/**
 * Temperature factor of IEEE 485, between the table's rows by straight lines. Colder than its first row (-3.9 degC) the
 * first line is continued, which the standard does not cover; warmer than its last row (48.9 degC) the factor stays.
 */
export function temperatureFactor(tempC: number): number {
  mustLie('tempC', tempC, -60, 80);
  const tempF = tempC * 1.8 + 32;
  const last = table.at(-1)!;
  if (tempF >= last[0]) return last[1];
  let row = 1;
  while (tempF > table[row]![0]) row++;
  const [coldF, coldFactor] = table[row - 1]!;
  const [warmF, warmFactor] = table[row]!;
  return coldFactor + ((tempF - coldF) / (warmF - coldF)) * (warmFactor - coldFactor);
}
