import { type EnergyColumn, energyColumns, type Ledger } from './ledger.js';

/** How well the ledger closes. Imbalance is in - out - lost - stored. */
export interface Closing {
  /** Largest hourly imbalance, Wh. */
  worstHourWh: number;
  /** Hour of the largest imbalance relative to that hour's throughput. */
  worstHour: number;
  /** That largest relative imbalance. */
  worstRelative: number;
  /** Imbalance of the whole year, Wh. */
  yearWh: number;
}

/** Relative hourly imbalance above which a year is refused. */
export const closingTolerance = 1e-9;

/** Rounding of a difference of two stored energies, relative to them: about 45 units in the last place. */
const storedRounding = 1e-14;

const columnsOf = (side: 'in' | 'out' | 'lost') =>
  (Object.keys(energyColumns) as EnergyColumn[]).filter((name) => energyColumns[name] === side);
const into = columnsOf('in');
const outOf = [...columnsOf('out'), ...columnsOf('lost')];

/**
 * Measures how well every hour and the year close: energy in = out + lost + change of what the bank holds.
 * Each hour is measured against its own throughput, in + out + lost. The change of what the bank holds is a difference
 * of two large numbers: its rounding, a few units in the last place of the stored energy, is taken off first.
 */
export function measureClosing(ledger: Ledger): Closing {
  const closing: Closing = { worstHourWh: 0, worstHour: 0, worstRelative: 0, yearWh: 0 };
  const inColumns = into.map((name) => ledger[name]);
  const outColumns = outOf.map((name) => ledger[name]);
  let before = ledger.bankStoredAtStartWh;
  for (let h = 0; h < ledger.bankStoredWh.length; h++) {
    let imbalance = 0;
    let throughput = 0;
    for (const column of inColumns) {
      imbalance += column[h]!;
      throughput += Math.abs(column[h]!);
    }
    for (const column of outColumns) {
      imbalance -= column[h]!;
      throughput += Math.abs(column[h]!);
    }
    const stored = ledger.bankStoredWh[h]!;
    imbalance -= stored - before;
    before = stored;
    closing.yearWh += imbalance;
    const beyondRounding = Math.max(0, Math.abs(imbalance) - storedRounding * Math.abs(stored));
    const relative = Number.isFinite(imbalance) ? beyondRounding / (throughput + 1e-9) : Number.POSITIVE_INFINITY;
    if (!(relative <= closing.worstRelative)) {
      closing.worstRelative = relative;
      closing.worstHour = h;
    }
    if (Math.abs(imbalance) > closing.worstHourWh) closing.worstHourWh = Math.abs(imbalance);
  }
  return closing;
}

/**
 * Refuses a ledger that does not close.
 *
 * @throws Error naming the hour and the imbalance; always a fault of the program, never of the input
 */
export function assertCloses(ledger: Ledger): Closing {
  const closing = measureClosing(ledger);
  if (!(closing.worstRelative <= closingTolerance)) {
    throw new Error(
      `the ledger does not close: hour ${closing.worstHour} is off by ${closing.worstRelative.toExponential(2)} of its throughput`,
    );
  }
  return closing;
}
