import { type ChargedCell, chargeCellV, type Overcharge, overcharge } from './charge.js';
import { type Discharge, discharge, dischargeCellV, restCellV } from './discharge.js';
import { nodeTempC, powerNodes, stateNodes, temperatureNodes } from './grid.js';

/** Largest power of the tables, W per Ah of C10 and cell, and largest current, 1/h: about a one-hour rate. */
const largestPower = 2.5;
const largestRate = 1.2;
const rates = 48;

/** Rate of scan point j, 1/h; cubed so that float currents and cranking currents are both resolved. */
function rateAt(j: number): number {
  return largestRate * (j / rates) ** 3;
}

/** Power of node p; squared, for the quick rise of voltage at small currents. */
function powerAt(p: number): number {
  return largestPower * (p / (powerNodes - 1)) ** 2;
}

/** Share of the deepest depth at a node; even in its root, since the voltage of a charge is steep near full. */
function chargeShare(k: number): number {
  const v = 1 - k / (stateNodes - 1);
  return v * v;
}

/** Position on the axis of the charge tables, in nodes, of a depth as a share of the deepest. */
export function chargePosition(share: number): number {
  return share > 0 ? (stateNodes - 1) * (1 - Math.sqrt(share)) : stateNodes - 1;
}

/** Position on the axis of the discharge tables, in nodes, of a depth as a share of the deepest. */
export function dischargePosition(share: number): number {
  return (stateNodes - 1) * (1 - share);
}

/** Position of a power (W per Ah of C10 and cell) on the power axis, in nodes. */
export function powerPosition(power: number): number {
  return (powerNodes - 1) * Math.sqrt(power * (1 / largestPower));
}

/** What the tables depend on: not the size of the bank, only the kind of cell and its set voltages. */
export interface LeadAcidCell extends ChargedCell {
  /** How capacity changes with rate, see `capacityByRate`. */
  rateWeight: number;
  /** Charge removed over C10 at the far end of the tables. */
  deepest: number;
  /** End of discharge under load, V. */
  cutoffV: number;
  /** Set voltage of stage (0 absorption, 1 float, 2 equalise) at a temperature, V. */
  setCellV(stage: number, tempC: number): number;
}

export interface LeadAcidTables {
  /** Cell voltage in charge by temperature, state (charge axis), power. */
  chargeV: Float64Array;
  /** Cell voltage in discharge by temperature, state (discharge axis), power. */
  dischargeV: Float64Array;
  /** Rate I/C10 accepted at the set voltage of each stage, by temperature and state (charge axis). */
  acceptance: [Float64Array, Float64Array, Float64Array];
  /** Rate I/C10 at which a discharging cell falls to its cutoff, by temperature and state (discharge axis). */
  dischargeLimit: Float64Array;
}

/** Tabulates a lead-acid cell: voltage against power both ways, acceptance and discharge limit. */
export function leadAcidTables(cell: LeadAcidCell): LeadAcidTables {
  const tables: LeadAcidTables = {
    chargeV: new Float64Array(temperatureNodes * stateNodes * powerNodes),
    dischargeV: new Float64Array(temperatureNodes * stateNodes * powerNodes),
    acceptance: [
      new Float64Array(temperatureNodes * stateNodes),
      new Float64Array(temperatureNodes * stateNodes),
      new Float64Array(temperatureNodes * stateNodes),
    ],
    dischargeLimit: new Float64Array(temperatureNodes * stateNodes),
  };
  const rate = Float64Array.from({ length: rates + 1 }, (_, j) => rateAt(j));
  const cellV = new Float64Array(rates + 1);
  for (let t = 0; t < temperatureNodes; t++) {
    const tempC = nodeTempC(t);
    const at: Overcharge[] = [];
    const drained: Discharge[] = [];
    for (let j = 1; j <= rates; j++) {
      at.push(overcharge(rate[j]!, tempC, cell));
      drained.push(discharge(rate[j]!, tempC, cell.resistanceFactor, cell.rateWeight));
    }
    const setV = [cell.setCellV(0, tempC), cell.setCellV(1, tempC), cell.setCellV(2, tempC)];
    for (let k = 0; k < stateNodes; k++) {
      const node = t * stateNodes + k;
      const charging = 1 - cell.deepest * chargeShare(k);
      cellV[0] = restCellV(charging);
      // The running maximum removes dips of a few mV where a larger current has had less time to overcharge.
      for (let j = 1; j <= rates; j++) cellV[j] = Math.max(cellV[j - 1]!, chargeCellV(rate[j]!, charging, at[j - 1]!));
      voltageByPower(rate, cellV, tables.chargeV, node * powerNodes);
      for (let stage = 0; stage < 3; stage++) {
        tables.acceptance[stage]![node] = rateWhere(rate, cellV, setV[stage]!, 1);
      }

      const discharging = 1 - cell.deepest * (1 - k / (stateNodes - 1));
      cellV[0] = restCellV(discharging);
      for (let j = 1; j <= rates; j++) cellV[j] = dischargeCellV(discharging, drained[j - 1]!);
      voltageByPower(rate, cellV, tables.dischargeV, node * powerNodes);
      tables.dischargeLimit[node] = rateWhere(rate, cellV, cell.cutoffV, -1);
    }
  }
  return tables;
}

/**
 * Fills one row of a table with the voltage at each power node, from voltages at the scanned rates. Past the largest
 * power the cell can give, the voltage there holds, so that current goes on rising with the power asked for.
 */
function voltageByPower(rate: Float64Array, cellV: Float64Array, row: Float64Array, offset: number): void {
  let j = 1;
  let below = 0;
  let above = rate[1]! * cellV[1]!;
  for (let p = 0; p < powerNodes; p++) {
    const power = powerAt(p);
    while (above < power && j < rate.length - 1) {
      const next = rate[j + 1]! * cellV[j + 1]!;
      if (next <= above) break;
      below = above;
      above = next;
      j++;
    }
    const part = Math.min(1, (power - below) / (above - below));
    row[offset + p] = cellV[j - 1]! + part * (cellV[j]! - cellV[j - 1]!);
  }
}

/** Largest rate whose voltage is still on the near side of `limitV`; `side` 1 for rising voltages, -1 for falling. */
function rateWhere(rate: Float64Array, cellV: Float64Array, limitV: number, side: 1 | -1): number {
  if (side * (cellV[0]! - limitV) >= 0) return 0;
  for (let j = 1; j < rate.length; j++) {
    const past = side * (cellV[j]! - limitV);
    if (past > 0) {
      const before = side * (limitV - cellV[j - 1]!);
      return rate[j - 1]! + (before / (before + past)) * (rate[j]! - rate[j - 1]!);
    }
  }
  return rate[rate.length - 1]!;
}
