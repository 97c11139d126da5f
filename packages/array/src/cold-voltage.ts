import { OutOfRangeError } from '@wintergap/ground';

// Open-circuit factor of crystalline silicon by lowest temperature, as in a common US code table (from memory):
// [lowest degC of the row, factor].
const coldFactors: readonly (readonly [number, number])[] = [
  [25, 1],
  [20, 1.02],
  [15, 1.04],
  [10, 1.06],
  [5, 1.08],
  [0, 1.1],
  [-5, 1.12],
  [-10, 1.14],
  [-15, 1.16],
  [-20, 1.18],
  [-25, 1.2],
  [-30, 1.21],
  [-35, 1.23],
  [-40, 1.25],
];

/** Below the table's end its steps go on at 0.004 per K. */
const beyondPerK = 0.004;

/**
 * Open-circuit voltage in the cold over that at 25 degC, for crystalline silicon whose sheet states no coefficient.
 * Before sunrise the cells are as cold as the air, so the site's record low is the temperature that counts.
 */
export function coldVoltageFactor(lowC: number): number {
  if (!(lowC >= -90 && lowC <= 60)) throw new OutOfRangeError(`record low must be -90 to 60 degC, got ${lowC}`);
  // A row holds down to and including its lowest whole degree.
  for (const [from, factor] of coldFactors) if (lowC >= from) return factor;
  return 1.25 + beyondPerK * (-40 - lowC);
}

/** As `coldVoltageFactor`, from the sheet's coefficient (fraction per K). */
export function coldVoltageRatio(lowC: number, vocPerK: number | undefined): number {
  return vocPerK === undefined ? coldVoltageFactor(lowC) : 1 + vocPerK * (lowC - 25);
}
