/** Data sheet of a module at 1000 W/m2 and 25 degC; coefficients are shares per K. */
export interface Sheet {
  vmpV: number;
  impA: number;
  vocV: number;
  iscA: number;
  vocPerK: number;
  iscPerK: number;
}

/** The five parameters at reference, and the change of the light current, A/K. */
export interface FiveParameters {
  IL: number;
  I0: number;
  a: number;
  Rs: number;
  /** Shunt conductance, S. */
  G: number;
  muIsc: number;
}

const k = 8.617333e-5;
const Tref = 298.15;
const gapEv = 1.121;

/**
 * De Soto, Klein and Beckman (2006), Solar Energy 80, 78-88: five conditions of the sheet (short circuit, open circuit,
 * maximum-power point, no slope of power there, and the coefficient of the open-circuit voltage), here by Newton in all
 * five unknowns at once, the logarithm standing for I0.
 *
 * @throws Error where it does not come to rest
 */
export function fiveParameters(sheet: Sheet): FiveParameters {
  const { vmpV, impA, vocV, iscA, vocPerK, iscPerK } = sheet;
  const muIsc = iscPerK * iscA;
  const warmK = 2;
  const misses = (x: number[]): number[] => {
    const [IL, lnI0, a, Rs, G] = x as [number, number, number, number, number];
    const p = { IL, I0: Math.exp(lnI0), a, Rs, G, muIsc };
    const miss = (at: Curve, V: number, I: number) =>
      at.IL - at.I0 * Math.expm1((V + I * Rs) / at.a) - at.G * (V + I * Rs) - I;
    const cold = curveAt(p, 1000, 25, { ...p });
    const slope = (p.I0 / a) * Math.exp((vmpV + impA * Rs) / a) + G;
    const warm = curveAt(p, 1000, 25 + warmK, { ...p });
    return [
      miss(cold, 0, iscA),
      miss(cold, vocV, 0),
      miss(cold, vmpV, impA),
      impA - (vmpV * slope) / (1 + Rs * slope),
      miss(warm, vocV * (1 + vocPerK * warmK), 0),
    ];
  };
  // Starting values as in the paper's section on solving: a of 1.3 ideal diodes, a twentieth of the voltage gap for Rs.
  const a = vocV / 24;
  const G = 1e-3;
  let x = [iscA, Math.log(iscA) - vocV / a, a, 0.4 * ((vocV - vmpV) / impA), G];
  let miss = misses(x);
  for (let round = 0; round < 200; round++) {
    const step = solveLinear(jacobian(misses, x, miss), miss);
    let share = 1;
    let next = x;
    let nextMiss = miss;
    // Half the step until it helps.
    for (; share > 1e-6; share /= 2) {
      next = x.map((v, i) => v - share * step[i]!);
      nextMiss = misses(next);
      if (next[2]! > 0 && norm(nextMiss) < norm(miss)) break;
    }
    x = next;
    miss = nextMiss;
    if (norm(miss) < 1e-11) break;
  }
  if (!(norm(miss) < 1e-8)) throw new Error(`no five parameters for ${JSON.stringify(sheet)}: misses ${miss}`);
  return { IL: x[0]!, I0: Math.exp(x[1]!), a: x[2]!, Rs: x[3]!, G: x[4]!, muIsc };
}

const norm = (values: number[]): number => Math.hypot(...values);

function jacobian(misses: (x: number[]) => number[], x: number[], miss: number[]): number[][] {
  const columns = x.map((v, i) => {
    const by = Math.max(Math.abs(v), 1e-4) * 1e-7;
    return misses(x.map((w, j) => (i === j ? w + by : w))).map((m, row) => (m - miss[row]!) / by);
  });
  return miss.map((_, row) => columns.map((column) => column[row]!));
}

/** Gauss's elimination with the largest pivot. */
function solveLinear(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = right.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(rows[r]![c]!) > Math.abs(rows[pivot]![c]!)) pivot = r;
    [rows[c], rows[pivot]] = [rows[pivot]!, rows[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const times = rows[r]![c]! / rows[c]![c]!;
      for (let j = c; j <= n; j++) rows[r]![j]! -= times * rows[c]![j]!;
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}

/** The curve of one module at some light and warmth. */
export interface Curve {
  IL: number;
  I0: number;
  a: number;
  Rs: number;
  G: number;
}

/** De Soto et al. (2006), eqs. 8 to 12, into `out`. */
export function curveAt(p: FiveParameters, lightWm2: number, cellC: number, out: Curve): Curve {
  const T = cellC + 273.15;
  const gap = gapEv * (1 - 0.0002677 * (T - Tref));
  out.IL = (lightWm2 / 1000) * (p.IL + p.muIsc * (T - Tref));
  out.I0 = p.I0 * (T / Tref) ** 3 * Math.exp(gapEv / (k * Tref) - gap / (k * T));
  out.a = p.a * (T / Tref);
  out.Rs = p.Rs;
  out.G = (p.G * lightWm2) / 1000;
  return out;
}

/** Modules as wired, seen from the controller's end of the cable. */
export interface Wiring {
  inSeries: number;
  /** Strings, mismatch and age taken off: fewer amperes at the same voltage. */
  strings: number;
  cableOhm: number;
}

/** Voltage and current at the controller for a voltage x = V + I Rs over the diode of each module. */
function terminal(curve: Curve, wiring: Wiring, x: number, out: { V: number; I: number }): void {
  const one = curve.IL - curve.I0 * Math.expm1(x / curve.a) - curve.G * x;
  out.I = one * wiring.strings;
  out.V = wiring.inSeries * (x - one * curve.Rs) - out.I * wiring.cableOhm;
}

const golden = (Math.sqrt(5) - 1) / 2;
const point = { V: 0, I: 0 };
const power = (curve: Curve, wiring: Wiring, x: number): number => {
  terminal(curve, wiring, x, point);
  return point.V * point.I;
};

/** Most power at the controller, W, and the voltage there into `out`: golden section along the curve. */
export function maximumPower(curve: Curve, wiring: Wiring, out: { V: number; I: number }): number {
  let low = 0;
  let high = curve.a * Math.log1p(curve.IL / curve.I0);
  let inner = high - golden * (high - low);
  let outer = low + golden * (high - low);
  let atInner = power(curve, wiring, inner);
  let atOuter = power(curve, wiring, outer);
  while (high - low > 1e-6 * curve.a) {
    if (atInner < atOuter) {
      low = inner;
      inner = outer;
      atInner = atOuter;
      outer = low + golden * (high - low);
      atOuter = power(curve, wiring, outer);
    } else {
      high = outer;
      outer = inner;
      atOuter = atInner;
      inner = high - golden * (high - low);
      atInner = power(curve, wiring, inner);
    }
  }
  terminal(curve, wiring, (low + high) / 2, out);
  return out.V * out.I;
}

/** Current at a voltage of the controller's terminals, A, never negative: halving, since V rises along the curve. */
export function currentAtVoltage(curve: Curve, wiring: Wiring, voltageV: number): number {
  let low = 0;
  let high = curve.a * Math.log1p(curve.IL / curve.I0);
  for (let i = 0; i < 34; i++) {
    const x = (low + high) / 2;
    terminal(curve, wiring, x, point);
    if (point.V < voltageV) low = x;
    else high = x;
  }
  terminal(curve, wiring, (low + high) / 2, point);
  return Math.max(0, point.I);
}

/** Faiman (2008), Prog. Photovolt. 16, 307-315: joint fit of seven modules. */
export const cellByWindC = (airC: number, planeWm2: number, windMs: number): number =>
  airC + planeWm2 / (25.0 + 6.84 * windMs);

/** Nominal operating cell temperature, IEC 61215: at 800 W/m2 and 20 degC. */
export const cellByNoctC = (airC: number, planeWm2: number, noctC: number): number =>
  airC + ((noctC - 20) * planeWm2) / 800;
