/**
 * Even grids in Float64Array and linear interpolation on them, for the calls made inside the hour loop.
 *
 * The temperature axis is the same for every table: -50 to 60 degC by 10 K. Outside it the edge value holds, so every
 * answer stays finite; the published equations are not meant for such cells anyway.
 */
export const coldestC = -50;
export const hottestC = 60;
const stepC = 10;
export const temperatureNodes: number = (hottestC - coldestC) / stepC + 1;
export const stateNodes = 45;
export const powerNodes = 25;

/** Just inside the last cell, so that a clamped position needs no second check. */
const lastTemperature = temperatureNodes - 1 - 1e-9;
const lastState = stateNodes - 1 - 1e-9;
const lastPower = powerNodes - 1 - 1e-9;

/** Temperature of node t, degC. */
export function nodeTempC(t: number): number {
  return coldestC + t * stepC;
}

/** Value at position x (in nodes, clamped to the table) of a one-dimensional table. */
export function interpolate(table: Float64Array, x: number): number {
  const last = table.length - 1;
  if (!(x > 0)) return table[0]!;
  if (x >= last) return table[last]!;
  const i = x | 0;
  const a = table[i]!;
  return a + (x - i) * (table[i + 1]! - a);
}

/** Value at state position s (in nodes) and temperature of a table laid out [temperature][state]. */
export function interpolateState(table: Float64Array, s: number, tempC: number): number {
  let t = (tempC - coldestC) * (1 / stepC);
  if (!(t > 0)) t = 0;
  else if (t > lastTemperature) t = lastTemperature;
  if (!(s > 0)) s = 0;
  else if (s > lastState) s = lastState;
  const ti = t | 0;
  const si = s | 0;
  const tf = t - ti;
  const sf = s - si;
  const k = ti * stateNodes + si;
  const a = table[k]!;
  const b = table[k + stateNodes]!;
  const low = a + sf * (table[k + 1]! - a);
  const high = b + sf * (table[k + stateNodes + 1]! - b);
  return low + tf * (high - low);
}

/** Value at power position p and state position s (in nodes) and temperature of a table [temperature][state][power]. */
export function interpolatePower(table: Float64Array, p: number, s: number, tempC: number): number {
  let t = (tempC - coldestC) * (1 / stepC);
  if (!(t > 0)) t = 0;
  else if (t > lastTemperature) t = lastTemperature;
  if (!(s > 0)) s = 0;
  else if (s > lastState) s = lastState;
  if (!(p > 0)) p = 0;
  else if (p > lastPower) p = lastPower;
  const ti = t | 0;
  const si = s | 0;
  const pi = p | 0;
  const tf = t - ti;
  const sf = s - si;
  const pf = p - pi;
  const k = (ti * stateNodes + si) * powerNodes + pi;
  const m = k + stateNodes * powerNodes;
  const a = table[k]!;
  const b = table[k + powerNodes]!;
  const c = table[m]!;
  const d = table[m + powerNodes]!;
  const ap = a + pf * (table[k + 1]! - a);
  const bp = b + pf * (table[k + powerNodes + 1]! - b);
  const cp = c + pf * (table[m + 1]! - c);
  const dp = d + pf * (table[m + powerNodes + 1]! - d);
  const low = ap + sf * (bp - ap);
  const high = cp + sf * (dp - cp);
  return low + tf * (high - low);
}
