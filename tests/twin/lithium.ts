import type { Cells } from './bank.js';

type Points = readonly (readonly [at: number, is: number])[];

/** A LiFePO4 cell as tables: printed points with straight lines between them. */
export interface Lithium {
  capacityAh: number;
  /** Ohm x Ah of one cell at 25 degC. */
  resistance: number;
  coulombicEfficiency: number;
  restByState: Points;
  resistanceByTemp: Points;
  capacityByTemp: Points;
  chargeLimitByTemp: Points;
  dischargeLimitByTemp: Points;
}

/** LiFePO4 cells: rest voltage and one resistance, which rises near full by 1 + 0.02 / (1 - s). */
export function lithiumCells(cell: Lithium): Cells {
  const ohm = (tempC: number) => (cell.resistance / cell.capacityAh) * read(cell.resistanceByTemp, tempC);
  const restV = (s: number) => read(cell.restByState, s);
  return {
    restV,
    chargeV: (amps, s, tempC) => restV(s) + amps * ohm(tempC) * (1 + 0.02 / Math.max(1 - s, 1e-4)),
    dischargeV: (amps, s, tempC) => Math.max(restV(s) / 2, restV(s) - amps * ohm(tempC)),
    storedShare: () => cell.coulombicEfficiency,
    lowest: (_amps, tempC) => 1 - read(cell.capacityByTemp, tempC),
    chargeLimitShare: (tempC) => read(cell.chargeLimitByTemp, tempC),
    dischargeLimitShare: (tempC) => read(cell.dischargeLimitByTemp, tempC),
    gasV: 0,
  };
}

function read(points: Points, at: number): number {
  const first = points[0]!;
  if (at <= first[0]) return first[1];
  for (let i = 1; i < points.length; i++) {
    const [x1, y1] = points[i]!;
    if (at > x1) continue;
    const [x0, y0] = points[i - 1]!;
    return y0 + ((at - x0) / (x1 - x0)) * (y1 - y0);
  }
  return points[points.length - 1]![1];
}
