/**
 * A LiFePO4 cell: rest voltage, resistance and capacity by temperature. Values typical of published curves, from
 * memory, of no one maker.
 */

/** Rest voltage, V, at each state of charge. The steep foot below 10 % and the shoulder above 95 % are rounded. */
export const restByState = [
  [0, 2.8],
  [0.05, 3.1],
  [0.1, 3.2],
  [0.2, 3.25],
  [0.3, 3.28],
  [0.4, 3.29],
  [0.5, 3.3],
  [0.6, 3.31],
  [0.7, 3.32],
  [0.8, 3.33],
  [0.9, 3.34],
  [0.95, 3.36],
  [1, 3.42],
] as const;

/** Resistance against that at 25 degC, by temperature. */
export const resistanceByTemp = [
  [-50, 14],
  [-30, 8],
  [-20, 5],
  [-10, 3],
  [0, 2],
  [10, 1.4],
  [25, 1],
  [40, 0.85],
  [60, 0.8],
] as const;

/** Capacity against that at 25 degC, by temperature; 60-80 % at -20 degC. */
export const capacityByTemp = [
  [-50, 0.2],
  [-40, 0.35],
  [-30, 0.52],
  [-20, 0.7],
  [-10, 0.83],
  [0, 0.92],
  [10, 0.97],
  [25, 1],
  [60, 1],
] as const;

/** Share of the charging current limit allowed by temperature: none at 0 degC and below, all from 5 degC. */
export const chargeLimitByTemp = [
  [-50, 0],
  [0, 0],
  [5, 1],
  [60, 1],
] as const;

/** Share of the discharging current limit allowed by temperature: electronics cut off below -20 degC. */
export const dischargeLimitByTemp = [
  [-50, 0],
  [-25, 0],
  [-20, 1],
  [60, 1],
] as const;

/** Share of the charge put in that can be drawn again; above 0.99 in the literature. */
export const coulombicEfficiency = 0.995;

/**
 * Rise of the resistance to charging near full, 1 + 0.02 / (1 - s): the cell fills ever more slowly at a constant
 * voltage, which is the short taper of a lithium charge (a tenth of an hour or so). Ours, no source.
 */
export function fullnessFactor(s: number): number {
  const left = 1 - s;
  return 1 + 0.02 / Math.max(left, 1e-4);
}

/** Values of a printed table at even steps from its first to its last point. */
export function evenTable(points: readonly (readonly [number, number])[], step: number): Float64Array {
  const from = points[0]![0];
  const to = points[points.length - 1]![0];
  const table = new Float64Array(Math.round((to - from) / step) + 1);
  let k = 1;
  for (let i = 0; i < table.length; i++) {
    const x = from + i * step;
    while (k < points.length - 1 && points[k]![0] < x) k++;
    const [x0, y0] = points[k - 1]!;
    const [x1, y1] = points[k]!;
    table[i] = y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  }
  return table;
}
