/** Water split by one ampere-hour in one cell, g: 18.015 g/mol over 2 x 96485 C/mol x 1 h / 3600 s. */
export const waterGramsPerAh: number = (18.015 * 3600) / (2 * 96485);

/**
 * Water a bank loses to gassing, g.
 *
 * @param gassingAh charge through the bank that was not stored
 * @param cells cells in series
 * @param recombination share of the gas that turns back to water (sealed cells near 0.98)
 */
export function waterLossGrams(gassingAh: number, cells: number, recombination: number): number {
  return gassingAh * cells * waterGramsPerAh * (1 - recombination);
}

/**
 * Voltage at which splitting water takes up no heat from around it and gives none: its heat of formation, 285.83 kJ/mol
 * (CODATA), over the charge of two electrons.
 */
export const waterSplittingV: number = 285_830 / (2 * 96485);

/**
 * Energy that gas carries out of a bank, Wh: what went into splitting water and does not warm the cells. Gas that turns
 * back to water inside a sealed cell gives it up again.
 *
 * @param gassingAh charge through the bank that was not stored
 * @param cells cells in series
 * @param recombination share of the gas that turns back to water
 */
export function gasEnergyWh(gassingAh: number, cells: number, recombination: number): number {
  return gassingAh * cells * waterSplittingV * (1 - recombination);
}
