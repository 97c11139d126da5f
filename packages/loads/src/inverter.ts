import { hoursPerYear, mustHold, mustLie, OutOfRangeError } from '@wintergap/ground';

/**
 * An inverter from the bank to the AC loads. Its input is output + idle + k1 output + k2 output^2 / rating.
 *
 * Source, from memory: Schmidt and Sauer 1996, Sonnenenergie 21(4), 43-47. The idle term is the electronics, the
 * proportional one the semiconductors' voltage drops and switching, the square one resistance.
 */
export interface Inverter {
  /** Continuous AC rating, W. */
  powerW: number;
  /** What it gives for the seconds of a motor's start, W. */
  surgeW: number;
  /** Draw on the bank without load, W. */
  idleW: number;
  /** k1, W lost per W given. */
  proportionalLoss: number;
  /** k2, loss at full power by resistance, as a share of the rating. */
  squareLoss: number;
  /**
   * Search mode: below a mean load of `belowW` in an hour the inverter sleeps between pulses and draws `idleW` of
   * this kind instead.
   */
  search?: { idleW: number; belowW: number };
}

/** Throws unless all figures make sense. */
export function checkInverter(inverter: Inverter): void {
  mustLie('inverter powerW', inverter.powerW, 1, 1e9);
  mustLie('inverter surgeW', inverter.surgeW, inverter.powerW, 1e9);
  mustLie('inverter idleW', inverter.idleW, 0, inverter.powerW);
  mustLie('inverter proportionalLoss', inverter.proportionalLoss, -0.5, 1);
  mustLie('inverter squareLoss', inverter.squareLoss, 0, 1);
  if (!lossIsSound(inverter)) throw new OutOfRangeError('inverter must lose at least half its idle draw at every load');
  if (inverter.search) {
    mustLie('inverter search idleW', inverter.search.idleW, 0, inverter.idleW);
    mustLie('inverter search belowW', inverter.search.belowW, 0, inverter.powerW);
  }
}

/** Whether idle + k1 p + k2 p^2 is nowhere less than half the idle draw, between no load and the rating. */
export function lossIsSound(inverter: Omit<Inverter, 'surgeW' | 'search'>): boolean {
  const { powerW, idleW, proportionalLoss: k1, squareLoss: k2 } = inverter;
  if (idleW < 0 || k2 < 0) return false;
  const least = k2 > 0 ? Math.min(Math.max(-k1 / (2 * k2), 0), 1) : k1 < 0 ? 1 : 0;
  return idleW / powerW + k1 * least + k2 * least * least >= 0.5 * (idleW / powerW);
}

/**
 * DC power that the inverter draws to give `acW`. Above the rating the formula goes on, but the inverter does not:
 * limit the output before.
 */
export function inverterInputW(acW: number, inverter: Inverter): number {
  const { search } = inverter;
  const idleW = search !== undefined && acW < search.belowW ? search.idleW : inverter.idleW;
  return acW + idleW + inverter.proportionalLoss * acW + (inverter.squareLoss * acW * acW) / inverter.powerW;
}

/** Output over input, 0 to 1; 0 without load. */
export function inverterEfficiency(acW: number, inverter: Inverter): number {
  return acW > 0 ? acW / inverterInputW(acW, inverter) : 0;
}

/**
 * DC power that the inverter draws in each hour, W. It gives no more than its rating: load above it is not in the
 * result and stays dark.
 */
export function inverterYear(acW: Float64Array, inverter: Inverter): Float64Array {
  checkInverter(inverter);
  mustHold('acW', acW, hoursPerYear, 0, 1e12);
  const dcW = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) dcW[h] = inverterInputW(Math.min(acW[h]!, inverter.powerW), inverter);
  return dcW;
}
