/** One cell of a chemistry; currents in A of the whole bank, `s` the state of charge by the label. */
export interface Cells {
  restV(s: number): number;
  chargeV(amps: number, s: number, tempC: number): number;
  dischargeV(amps: number, s: number, tempC: number): number;
  /** Share of a charging current that is stored. */
  storedShare(amps: number, s: number): number;
  /** State of charge below which a current cannot be drawn. */
  lowest(amps: number, tempC: number): number;
  /** Share of the current limits that a temperature leaves. */
  chargeLimitShare(tempC: number): number;
  dischargeLimitShare(tempC: number): number;
  /** Energy that leaves with the gas of one Ah, Wh. */
  gasV: number;
}

export interface BankSettings {
  cells: Cells;
  inSeries: number;
  labelAh: number;
  /** Lowest state of charge the owner allows. */
  floor: number;
  /** Set voltages of a cell at 25 degC, and their change per K; compensated between -20 and 50 degC. */
  absorptionV: number;
  floatV: number;
  equaliseV: number;
  compensationVPerK: number;
  cutoffV: number;
  chargeLimitA: number;
  dischargeLimitA: number;
  /** Share of the charge held that is lost in a month (730 h) at 25 degC; doubles for 10 K. */
  selfDischargePerMonth: number;
  absorptionH: number;
  tailA: number;
  equaliseEveryDays: number;
  equaliseH: number;
}

export type Stage = 'absorption' | 'float' | 'equalise';

/** Chargers with a sensor at the bank stop here. */
const hottestC = 50;

export function setVoltage(bank: BankSettings, stage: Stage, tempC: number): number {
  const at25 = stage === 'absorption' ? bank.absorptionV : stage === 'float' ? bank.floatV : bank.equaliseV;
  return bank.inSeries * (at25 + bank.compensationVPerK * (Math.min(50, Math.max(-20, tempC)) - 25));
}

/** What a bank does with a power offered to it. One object, filled again and again. */
export interface Charge {
  amps: number;
  volts: number;
  /** What it takes at its terminals, W. */
  takesW: number;
  /** Whether its set voltage held it back. */
  atSetVoltage: boolean;
}

/** Charges with up to `offeredW`: the current whose power that is, or the one at which the terminals reach the set voltage. */
export function charge(
  bank: BankSettings,
  stage: Stage,
  offeredW: number,
  s: number,
  tempC: number,
  out: Charge,
): Charge {
  const { cells, inSeries } = bank;
  const before = out.amps;
  out.amps = 0;
  out.takesW = 0;
  out.volts = inSeries * cells.restV(s);
  out.atSetVoltage = false;
  if (s >= 1 || tempC >= hottestC || offeredW <= 0) return out;
  const limitA = bank.chargeLimitA * cells.chargeLimitShare(tempC);
  const setV = setVoltage(bank, stage, tempC) / inSeries;
  const cellW = offeredW / inSeries;
  // At the set voltage the whole offer would be this current. Where its voltage is above, the set voltage holds it back.
  const atMost = Math.min(cellW / setV, limitA);
  let amps = atMost;
  let volts = setV;
  if (amps > 0 && cells.chargeV(amps, s, tempC) > setV) {
    amps = currentAtVoltage(cells, setV, atMost, before, s, tempC);
    out.atSetVoltage = amps > 0;
  } else {
    // The current of the offered power, I V(I) = P, by going round: V hardly changes with I.
    for (let i = 0; i < 30; i++) {
      volts = cells.chargeV(amps, s, tempC);
      const next = Math.min(cellW / volts, limitA);
      const isSame = Math.abs(next - amps) < 1e-7 * next;
      amps = next;
      if (isSame) break;
    }
  }
  out.amps = amps;
  out.volts = amps > 0 ? inSeries * volts : inSeries * cells.restV(s);
  out.takesW = amps * inSeries * volts;
  return out;
}

/**
 * The largest charging current that keeps to a voltage, A, up to `mostA`, which does not: sought by its logarithm, since it
 * can be a trickle, and from near a guess, since the minute before it was nearly the same.
 */
function currentAtVoltage(
  cells: Cells,
  voltageV: number,
  mostA: number,
  guessA: number,
  s: number,
  tempC: number,
): number {
  if (cells.restV(s) >= voltageV) return 0;
  const overAt = (lnAmps: number) => cells.chargeV(Math.exp(lnAmps), s, tempC) - voltageV;
  const most = Math.log(mostA);
  let high = Math.min(most, Math.log(Math.max(guessA, 1e-9)) + 0.004);
  let atHigh = overAt(high);
  let low = high;
  let atLow = atHigh;
  for (let step = 0.008; atLow > 0; step *= 3) {
    if (low < -30) return 0;
    high = low;
    atHigh = atLow;
    low -= step;
    atLow = overAt(low);
  }
  for (let step = 0.008; atHigh <= 0 && high < most; step *= 3) {
    low = high;
    atLow = atHigh;
    high = Math.min(most, high + step);
    atHigh = overAt(high);
  }
  // Between the two along the straight line, the end that stays counting half each time (Illinois rule).
  for (let i = 0; i < 60 && high - low > 1e-6; i++) {
    const at = (low * atHigh - high * atLow) / (atHigh - atLow);
    const over = overAt(at);
    if (Math.abs(over) < 1e-6) return Math.exp(at);
    if (over > 0) {
      high = at;
      atHigh = over;
      atLow /= 2;
    } else {
      low = at;
      atLow = over;
      atHigh /= 2;
    }
  }
  return Math.exp(low);
}

/** What a bank gives of a power asked of it. */
export interface Discharge {
  amps: number;
  volts: number;
  givesW: number;
}

/** Discharges with up to `askedW`, within its cutoff voltage, its current limit, and what cold and current leave of it. */
export function discharge(bank: BankSettings, askedW: number, s: number, tempC: number, out: Discharge): Discharge {
  const { cells, inSeries } = bank;
  const cellW = askedW / inSeries;
  const limitA = bank.dischargeLimitA * cells.dischargeLimitShare(tempC);
  // I V(I) = P by going round, from the voltage of the minute before; within the limits of current and voltage.
  let volts = out.volts > 0 ? out.volts / inSeries : cells.restV(s);
  let amps = cellW / volts;
  let isWithin = true;
  for (let i = 0; i < 30; i++) {
    volts = cells.dischargeV(amps, s, tempC);
    isWithin = amps <= limitA && volts >= bank.cutoffV;
    const next = cellW / volts;
    if (!isWithin || Math.abs(next - amps) < 1e-6 * amps) break;
    amps = next;
  }
  if (!isWithin) {
    let low = 0;
    let high = Math.min(amps, 10 * bank.labelAh);
    for (let i = 0; i < 30; i++) {
      const middle = (low + high) / 2;
      volts = cells.dischargeV(middle, s, tempC);
      if (middle <= limitA && volts >= bank.cutoffV && middle * volts < cellW) low = middle;
      else high = middle;
    }
    amps = low;
    volts = cells.dischargeV(amps, s, tempC);
  }
  if (s <= Math.max(bank.floor, cells.lowest(amps, tempC)) + 1e-9) amps = 0;
  out.amps = amps;
  out.volts = inSeries * (amps > 0 ? volts : cells.restV(s));
  out.givesW = Math.min(amps * out.volts, askedW);
  return out;
}

/** Share of the charge held that is lost in an hour; the doubling per 10 K is not trusted above 50 degC. */
export const selfDischargePerHour = (bank: BankSettings, tempC: number): number =>
  (bank.selfDischargePerMonth / 730) * 2 ** ((Math.min(tempC, hottestC) - 25) / 10);
