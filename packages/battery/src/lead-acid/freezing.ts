/** Relative density of the acid by state of charge, flooded deep-cycle cells at 25 degC: common trade table. */
const densityByState = [
  [0, 1.12],
  [0.25, 1.155],
  [0.5, 1.19],
  [0.75, 1.225],
  [1, 1.265],
] as const;

/** Freezing point, degC, of sulphuric acid by relative density at 15.6 degC: Vinal, Storage Batteries; from memory. */
const freezingByDensity = [
  [1, 0],
  [1.05, -3.3],
  [1.1, -7.7],
  [1.15, -15],
  [1.2, -27],
  [1.25, -52],
  [1.3, -70],
] as const;

function interpolated(table: readonly (readonly [number, number])[], x: number): number {
  let k = 1;
  while (k < table.length - 1 && table[k]![0] < x) k++;
  const [x0, y0] = table[k - 1]!;
  const [x1, y1] = table[k]!;
  return y0 + ((Math.min(Math.max(x, table[0]![0]), table[table.length - 1]![0]) - x0) / (x1 - x0)) * (y1 - y0);
}

/** Relative density of the electrolyte of a lead-acid cell at a state of charge, at 25 degC. */
export function electrolyteDensity(s: number): number {
  return interpolated(densityByState, s);
}

/** Freezing point of sulphuric acid, degC, by relative density 1.0 to 1.3. */
export function acidFreezingC(density: number): number {
  return interpolated(freezingByDensity, density);
}

/**
 * Temperature at which the electrolyte of a lead-acid cell begins to freeze, degC. The density is taken as mixed;
 * after a deep discharge the acid near the plates is weaker and freezes sooner. Sealed cells hold slightly stronger
 * acid, so for them this errs on the warm side.
 */
export function freezingC(s: number): number {
  return acidFreezingC(electrolyteDensity(s));
}
