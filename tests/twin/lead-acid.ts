import type { Cells } from './bank.js';

/** Two points of the current that a full cell draws at 25 degC: V, and A for each Ah of C10. */
export interface FullCell {
  floatV: number;
  floatRate: number;
  boostV: number;
  boostRate: number;
  bendBelowFinalV: number;
}

export interface LeadAcid {
  /** What the label says, less age: capacity in so many hours. The state of charge is counted by it. */
  labelAh: number;
  labelH: number;
  /** 0.67 in the printed rule of capacity and rate. */
  rateWeight: number;
  /** Drop over the cell against the printed one, and how much later it gasses. */
  resistanceFactor: number;
  efficiencyFactor: number;
  full: FullCell;
  /** Share of the gas that turns back to water inside. */
  recombination: number;
}

/**
 * Lead-acid cells of 2 V: Copetti, Lorenzo and Chenlo (1993), Progress in Photovoltaics 1, 283-292. SOC is 1 less the
 * charge removed over C10; the I of the bracketed terms is that of a 100 Ah cell at the same rate.
 */
export function leadAcidCells(cell: LeadAcid): Cells {
  const { rateWeight, resistanceFactor, efficiencyFactor, full } = cell;
  // C/C10 = 1.67 / (1 + 0.67 (I/I10)^0.9)
  const byRate = (timesI10: number) => (1 + rateWeight) / (1 + rateWeight * timesI10 ** 0.9);
  const byTemperature = (tempC: number) => 1 + 0.005 * (tempC - 25);
  const labelDepth = labelOverC10(byRate, cell.labelH);
  const c10 = cell.labelAh / labelDepth;
  const depthOf = (s: number) => (1 - s) * labelDepth;
  const rest = (depth: number) => 2.085 - 0.12 * depth;
  const efficiencySlope = (rate: number) => (20.73 * efficiencyFactor) / (10 * rate + 0.55);

  const chargeV = (amps: number, s: number, tempC: number): number => {
    const y = depthOf(s);
    const dT = tempC - 25;
    const atRest = rest(y);
    if (amps <= 0) return atRest;
    const rate = amps / c10;
    const scale = rate * Math.max(0.1, 1 - 0.025 * dT) * resistanceFactor;
    const plain = scale * (6 / (1 + (100 * rate) ** 0.86) + 0.036);
    const steep = scale * 0.48;
    let volts = 2 + 0.16 * (1 - y) + plain + steep / y ** 1.2;
    const gassing = (2.24 + 1.97 * Math.log(1 + rate)) * (1 - 0.002 * dT);
    const most = fullCellV(rate, dT, full);
    if (volts > gassing && most > gassing) {
      // V = Vg + (Vec - Vg)(1 - exp(-t/tau)). The time since gassing began at this current: the charge missing at its
      // onset less that missing now, each with the part of the current that goes to gas, over the current.
      const slope = efficiencySlope(rate);
      const atOnset = logExpm1(slope * onset(plain, steep, gassing));
      const hours = Math.max(0, (atOnset - logExpm1(slope * y)) / (slope * rate));
      const tau = 17.3 / (1 + 852 * rate ** 1.67);
      volts = Math.min(volts, gassing + (most - gassing) * (1 - Math.exp(-hours / tau)));
    }
    return Math.max(atRest, Math.min(volts, most));
  };

  const dischargeV = (amps: number, s: number, tempC: number): number => {
    const depth = depthOf(s);
    const rate = amps / c10;
    const capacity = byRate(10 * rate) * byTemperature(tempC);
    const state = 1 - depth / capacity;
    const bounded = Math.max(0.01, state);
    const scale = rate * (1 - 0.007 * (tempC - 25)) * resistanceFactor;
    // At rest the lower of the two states counts: the stored energy is counted by the line of the first.
    const restV = rest(1 - Math.min(1 - depth, Math.max(Math.min(1 - depth, 0), state)));
    return Math.max(0, restV - scale * (4 / (1 + (100 * rate) ** 1.3) + 0.27 / bounded ** 1.5 + 0.02));
  };

  return {
    restV: (s) => rest(depthOf(s)),
    chargeV,
    dischargeV,
    // eta = 1 - exp(20.73 (SOC - 1) / (I/I10 + 0.55))
    storedShare: (amps, s) => 1 - Math.exp(-efficiencySlope(amps / c10) * depthOf(s)),
    lowest: (amps, tempC) => 1 - (byRate((10 * amps) / c10) * byTemperature(tempC)) / labelDepth,
    chargeLimitShare: () => 1,
    dischargeLimitShare: () => 1,
    // Water takes up 285.83 kJ/mol (CODATA) when it is split: 1.48 V for two electrons.
    gasV: (285_830 / (2 * 96_485)) * (1 - cell.recombination),
  };
}

/** The label holds for an even discharge: q = C/C10 at the current that empties q in the label's time. */
function labelOverC10(byRate: (timesI10: number) => number, labelH: number): number {
  let q = 1;
  for (let i = 0; i < 200; i++) q = (q + byRate((10 * q) / labelH)) / 2;
  return q;
}

/** Charge missing at the onset of gassing, over C10: where the first equation meets the gassing voltage. */
function onset(plain: number, steep: number, gassing: number): number {
  // Round and round: y^-1.2 = (level + 0.16 y) / steep, where 0.16 y is small beside the level.
  const level = gassing - 2.16 - plain;
  let y = 0;
  for (let i = 0; i < 30; i++) {
    if (level + 0.16 * y <= 0) return 1;
    const next = Math.min(1, (steep / (level + 0.16 * y)) ** (1 / 1.2));
    if (Math.abs(next - y) < 1e-6 * next) return next;
    y = next;
  }
  return y;
}

const logExpm1 = (x: number): number => (x > 30 ? x : Math.log(Math.expm1(x)));

/**
 * Voltage at which a full cell takes a current. From the ten-hour rate on Copetti's final voltage; below it a line in
 * the logarithm of the current through the two points of EN 50272-2, bent towards it.
 */
function fullCellV(rate: number, dT: number, cell: FullCell): number {
  const final = (r: number) => (2.45 + 2.011 * Math.log(1 + r)) * (1 - 0.002 * dT);
  if (rate >= 0.1) return final(rate);
  const perEfold = (cell.boostV - cell.floatV) / Math.log(cell.boostRate / cell.floatRate);
  // The current doubles for 10 K more.
  const start = cell.floatV - (perEfold * Math.LN2 * dT) / 10;
  const straight = start + perEfold * Math.log(rate / cell.floatRate);
  const bend = final(0.1) - cell.bendBelowFinalV;
  if (straight <= bend) return straight;
  const lnBend = Math.log(cell.floatRate) + (bend - start) / perEfold;
  return bend + ((Math.log(rate) - lnBend) / (Math.log(0.1) - lnBend)) * cell.bendBelowFinalV;
}
