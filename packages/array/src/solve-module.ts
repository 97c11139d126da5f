import { OutOfRangeError } from '@wintergap/ground';
import { checkModuleSheet, type ModuleSheet } from './module-sheet.js';
import { boltzmannEvPerK, type ModuleParameters, referenceK } from './translation.js';

// De Soto et al. 2006: silicon, 1.121 eV at 25 degC, falling by 0.0002677 of it per K.
const siliconGap = { gapEv: 1.121, gapFallPerK: 0.0002677 };
// Cadmium telluride, the common high-voltage thin film: 1.475 eV, 0.0003 per K (from memory). For another
// material the gap is moved where the sheet needs it, see below.
const thinFilmGap = { gapEv: 1.475, gapFallPerK: 0.0003 };

/** Step over which the open-circuit coefficient is met; the paper finds 1 to 10 K alike. */
const stepK = 2;
const halvings = 100;
/** Far below the ideal diode, where vocV / a is about 25 to 35. */
const smallestShare = 1 / 200;

/**
 * The five parameters of De Soto, Klein & Beckman 2006 (Solar Energy 80, 78-88) from a data sheet.
 *
 * Conditions: short circuit, open circuit, the maximum-power point, zero slope of power there, and the
 * temperature coefficient of the open-circuit voltage. For a given ideality factor a and series resistance the
 * first three are linear in the rest; the fourth is then met by halving an interval of series resistance and the
 * fifth by halving one of a, so that it ends for every sheet. Where the fifth asks for a larger a than any curve
 * with Rs >= 0 and a shunt >= 0 has, the largest such a is taken and the band gap moved to meet the coefficient;
 * `gapEv` in the result tells.
 *
 * Throws a RangeError that names the value when the sheet contradicts itself.
 */
export function solveModule(sheet: ModuleSheet): ModuleParameters {
  checkModuleSheet(sheet);
  const gap = sheet.technology === 'thin-film' ? thinFilmGap : siliconGap;
  const fit: Fit = { seriesOhm: 0, shuntS: 0, lightA: 0, saturationA: 0 };

  // The largest a that leaves both resistances possible.
  let feasible = smallestShare * sheet.vocV;
  let infeasible = 0.5 * sheet.vocV;
  if (!fitCurve(sheet, feasible, fit)) {
    throw new OutOfRangeError(
      `vmpV ${sheet.vmpV} and impA ${sheet.impA} fit no module curve between iscA ${sheet.iscA} and vocV ${sheet.vocV}`,
    );
  }
  for (let k = 0; k < halvings; k++) {
    const a = 0.5 * (feasible + infeasible);
    if (fitCurve(sheet, a, fit)) feasible = a;
    else infeasible = a;
  }

  // Too large a coefficient (voltage falls too little) asks for a larger a.
  let idealityV = feasible;
  fitCurve(sheet, idealityV, fit);
  if (warmSurplus(sheet, idealityV, fit, gap) < 0) {
    let small = smallestShare * sheet.vocV;
    for (let k = 0; k < halvings; k++) {
      const a = 0.5 * (small + idealityV);
      fitCurve(sheet, a, fit);
      if (warmSurplus(sheet, a, fit, gap) > 0) small = a;
      else idealityV = a;
    }
    fitCurve(sheet, idealityV, fit);
  }
  return {
    ...fit,
    idealityV,
    lightAPerK: lightAPerK(sheet, fit),
    gapEv: gapForCoefficient(sheet, idealityV, fit, gap.gapFallPerK),
    gapFallPerK: gap.gapFallPerK,
    ratedW: sheet.powerW ?? sheet.vmpV * sheet.impA,
  };
}

interface Fit {
  seriesOhm: number;
  shuntS: number;
  lightA: number;
  saturationA: number;
}

/** Conditions one to four for a given a, into `fit`; false when Rs or the shunt would be negative. */
function fitCurve(sheet: ModuleSheet, a: number, fit: Fit): boolean {
  if (slopeSurplus(sheet, a, 0, fit) > 0) return false;
  let low = 0;
  let high = Math.min((sheet.vocV - sheet.vmpV) / sheet.impA, (sheet.vmpV / sheet.impA) * (1 - 1e-9));
  for (let k = 0; k < halvings; k++) {
    const middle = 0.5 * (low + high);
    if (slopeSurplus(sheet, a, middle, fit) > 0) high = middle;
    else low = middle;
  }
  slopeSurplus(sheet, a, low, fit);
  return fit.shuntS >= 0 && fit.saturationA > 0;
}

/**
 * Conditions one to three, linear in IL, I0 and G for a given a and Rs, into `fit`; returns by how much the curve
 * at the maximum-power point is steeper than constant power allows (condition four), S.
 */
function slopeSurplus(sheet: ModuleSheet, a: number, rs: number, fit: Fit): number {
  const { vmpV, impA, vocV, iscA } = sheet;
  // Exponentials relative to open circuit, so that none overflows.
  const atShort = Math.exp((iscA * rs - vocV) / a);
  const atPeak = Math.exp((vmpV + impA * rs - vocV) / a);
  const openV = vocV - iscA * rs;
  const peakV = vmpV - (iscA - impA) * rs;
  const determinant = (1 - atShort) * peakV - (atPeak - atShort) * openV;
  const scaled = (iscA * peakV - (iscA - impA) * openV) / determinant;
  const shuntS = ((1 - atShort) * (iscA - impA) - (atPeak - atShort) * iscA) / determinant;
  fit.seriesOhm = rs;
  fit.shuntS = shuntS;
  fit.saturationA = scaled * Math.exp(-vocV / a);
  fit.lightA = scaled - fit.saturationA + shuntS * vocV;
  return (scaled * atPeak) / a + shuntS - impA / (vmpV - impA * rs);
}

/**
 * Change of the light current that gives the sheet's change of the short-circuit current, A/K. The paper takes them
 * as one; a poor shunt carries the share Rs G of the light current past the short circuit.
 */
function lightAPerK(sheet: ModuleSheet, fit: Fit): number {
  return sheet.iscPerK * sheet.iscA * (1 + fit.seriesOhm * fit.shuntS);
}

/** Current left at the sheet's open-circuit voltage `stepK` above reference, A: positive when the model's is higher. */
function warmSurplus(sheet: ModuleSheet, a: number, fit: Fit, gap: { gapEv: number; gapFallPerK: number }): number {
  const warmth = (referenceK + stepK) / referenceK;
  const openV = sheet.vocV * (1 + sheet.vocPerK * stepK);
  const gapRise =
    (gap.gapEv / boltzmannEvPerK) * (1 / referenceK - (1 - gap.gapFallPerK * stepK) / (referenceK + stepK));
  const growth = warmth ** 3 * Math.exp(gapRise);
  return (
    fit.lightA +
    lightAPerK(sheet, fit) * stepK -
    fit.saturationA * growth * Math.expm1(openV / (a * warmth)) -
    fit.shuntS * openV
  );
}

/** The band gap that makes `warmSurplus` zero, eV: the given one, unless the largest possible a fell short. */
function gapForCoefficient(sheet: ModuleSheet, a: number, fit: Fit, gapFallPerK: number): number {
  const warmth = (referenceK + stepK) / referenceK;
  const openV = sheet.vocV * (1 + sheet.vocPerK * stepK);
  const current = fit.lightA + lightAPerK(sheet, fit) * stepK - fit.shuntS * openV;
  const growth = current / (fit.saturationA * Math.expm1(openV / (a * warmth)));
  const perEv = (1 / referenceK - (1 - gapFallPerK * stepK) / (referenceK + stepK)) / boltzmannEvPerK;
  return Math.log(growth / warmth ** 3) / perEv;
}
