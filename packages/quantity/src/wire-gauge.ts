import { OutOfRangeError } from '@wintergap/ground';
/**
 * Copper area of an American wire gauge, mm2 of a solid round wire.
 *
 * Source: ASTM B258: diameter 0.127 mm x 92^((36 - n)/39), with n = 0, -1, -2, -3 for 1/0, 2/0, 3/0 and 4/0.
 *
 * @param gauge -3 (4/0) to 40
 */
export function gaugeAreaMm2(gauge: number): number {
  if (!Number.isInteger(gauge) || gauge < -3 || gauge > 40) {
    throw new OutOfRangeError(`gauge must be a whole number from -3 (4/0) to 40, got ${gauge}`);
  }
  const diameterMm = 0.127 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameterMm ** 2;
}

/** Gauge number of `8 AWG`, `AWG 8`, `#8`, `2/0 AWG` or `4/0`; `null` when the text is no gauge. */
export function parseGauge(text: string): number | null {
  const match = /^(?:AWG\s*)?#?\s*(\d{1,2})(\/0)?\s*(AWG|ga|gauge)?$/i.exec(text.trim());
  if (!match) return null;
  const number = Number(match[1]);
  if (match[2]) return number >= 1 && number <= 4 ? 1 - number : null;
  const marked = /^(?:AWG|#)/i.test(text.trim()) || match[3] !== undefined;
  return marked && number <= 40 ? number : null;
}

/** Sizes of one gauge that are written with few digits differ by less: the next gauge is 21 % smaller. */
const sameGauge = 0.03;

/** The gauge of this area, to 3 %, as `8 AWG` or `2/0 AWG`; `null` for sizes between gauges and beyond 4/0. */
export function gaugeNear(areaMm2: number): string | null {
  for (let gauge = -3; gauge <= 40; gauge++) {
    if (Math.abs(areaMm2 / gaugeAreaMm2(gauge) - 1) > sameGauge) continue;
    return gauge > 0 ? `${gauge} AWG` : `${1 - gauge}/0 AWG`;
  }
  return null;
}
