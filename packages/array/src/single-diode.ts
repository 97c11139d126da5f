/**
 * The single-diode curve with series and shunt resistance, solved at one voltage and at its maximum power:
 *
 *   I = IL - I0 (exp(x / a) - 1) - G x,   x = V + I Rs
 *
 * x, the voltage across the diode, is the unknown throughout: I and V follow from it without iteration.
 * IL light current A, I0 saturation current A, a modified ideality factor V, Rs series ohm, G shunt conductance S.
 */

const maxSteps = 60;

/**
 * Current at terminal voltage `v`; negative above the open-circuit voltage.
 *
 * The equation x - Rs I(x) = V rises and curves upward in x, so Newton started above the root comes down to it
 * without overshoot. Two bounds give the start: the exponential dropped, and the exponential alone. The closed
 * form with the Lambert W function (Jain & Kapoor 2004, Solar Energy Materials & Solar Cells 81, 269-277) is the
 * same number but overflows where a small Rs meets a voltage far above open circuit.
 */
export function diodeCurrent(il: number, i0: number, a: number, rs: number, g: number, v: number): number {
  let x = v;
  if (rs > 0) {
    const drive = v + rs * (il + i0);
    x = drive / (1 + rs * g);
    if (drive > 0) x = Math.min(x, a * Math.log(drive / (rs * i0)));
    for (let step = 0; step < maxSteps; step++) {
      const diode = i0 * Math.exp(x / a);
      const change = (x - rs * (il + i0 - diode - g * x) - v) / (1 + rs * (diode / a + g));
      x -= change;
      if (Math.abs(change) < 1e-8 * a) break;
    }
  }
  // 700: the exponential of a voltage far above open circuit without series resistance stays a finite number.
  return il + i0 - i0 * Math.exp(Math.min(x / a, 700)) - g * x;
}

/** Voltage at which the current is zero, V; 0 without light. */
export function diodeOpenCircuit(il: number, i0: number, a: number, g: number): number {
  let x = a * Math.log1p(il / i0);
  for (let step = 0; step < maxSteps; step++) {
    const diode = i0 * Math.exp(x / a);
    const change = (diode - i0 + g * x - il) / (diode / a + g);
    x -= change;
    if (Math.abs(change) < 1e-8 * a) break;
  }
  return x;
}

/**
 * Maximum power into `out` as [W, V, A].
 *
 * dP/dx = I + I' (x - 2 I Rs), positive at short circuit, negative at open circuit, with one root between because
 * I is concave in V. Newton from the root for Rs = G = 0, kept inside the bracket by bisection.
 */
export function diodePeak(il: number, i0: number, a: number, rs: number, g: number, out: Float64Array): void {
  let low = 0;
  let high = a * Math.log1p(il / i0);
  let x = high - a * Math.log1p(high / a);
  for (let step = 0; step < maxSteps; step++) {
    const diode = i0 * Math.exp(x / a);
    const current = il + i0 - diode - g * x;
    const slope = -diode / a - g;
    const lever = x - 2 * current * rs;
    const rise = current + slope * lever;
    if (rise > 0) low = x;
    else high = x;
    const bend = 2 * slope - (diode / (a * a)) * lever - 2 * slope * slope * rs;
    let next = x - rise / bend;
    if (!(bend < 0 && next > low && next < high)) next = 0.5 * (low + high);
    const change = next - x;
    x = next;
    if (Math.abs(change) < 1e-7 * a) break;
  }
  const current = il + i0 - i0 * Math.exp(x / a) - g * x;
  const voltage = x - current * rs;
  out[0] = current * voltage;
  out[1] = voltage;
  out[2] = current;
}
