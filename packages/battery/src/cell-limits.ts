import type { CellKind } from './cell-traits.js';
import { type Chemistry, chemistryDefaults } from './chemistry-defaults.js';

/** What one cell of a chemistry can be set to, V at 25 degC, and how far a bank's nominal voltage may be off. */
export interface CellLimits {
  leastSetV: number;
  mostSetV: number;
  leastCutoffV: number;
  mostCutoffV: number;
  /** Lowest floor an owner may allow. */
  leastFloor: number;
  /** Share by which cells x nominal may miss the voltage: lithium banks of 12.8 V are called 12 V. */
  voltageTolerance: number;
  /** Cells of a bank that is called 12 V. */
  cellsPer12V: number;
  /** Lowest compensation of lead-acid set points, V per cell and K. */
  leastCompensationVPerK: number;
  /** A tail current above this share of the capacity per hour would end a charge that has hardly begun. */
  mostTailRate: number;
}

/** Generous limits for what chargers can be set to: common practice, no source. */
const limitsOfKind: Readonly<Record<CellKind, CellLimits>> = {
  'lead-acid': {
    leastSetV: 2.1,
    mostSetV: 2.8,
    leastCutoffV: 1.2,
    mostCutoffV: 2.05,
    leastFloor: -0.5,
    voltageTolerance: 0.03,
    cellsPer12V: 6,
    leastCompensationVPerK: -0.01,
    mostTailRate: 0.2,
  },
  lithium: {
    leastSetV: 3.2,
    mostSetV: 3.7,
    leastCutoffV: 2,
    mostCutoffV: 3.2,
    leastFloor: 0,
    voltageTolerance: 0.08,
    cellsPer12V: 4,
    leastCompensationVPerK: 0,
    mostTailRate: 0.2,
  },
};

/** The limits of a chemistry's kind of cell. */
export const cellLimitsOf = (chemistry: Chemistry): CellLimits =>
  limitsOfKind[chemistryDefaults[chemistry].traits.kind];

/**
 * Cells in series of a bank; `null` when no number of them makes its voltage.
 *
 * Lithium banks are called by the lead-acid voltage whose place they take: four cells to 12 V, so that 48 V is 16 cells and
 * 51.2 V (common practice, no source). One of 15 cells is written 48.1 V.
 */
export function cellsInSeries(chemistry: Chemistry, voltageV: number): number | null {
  const { cellV } = chemistryDefaults[chemistry];
  const { voltageTolerance, cellsPer12V } = cellLimitsOf(chemistry);
  const cells = voltageV % 12 === 0 ? (voltageV / 12) * cellsPer12V : Math.round(voltageV / cellV);
  return cells < 1 || Math.abs(voltageV / cells / cellV - 1) > voltageTolerance ? null : cells;
}

/** A set point for one cell: below 4 V it is that already, otherwise it is the bank's. */
export const setPointOfCell = (volts: number, cells: number): number => (volts < 4 ? volts : volts / cells);
