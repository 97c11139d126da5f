/**
 * Diffuse share of an hour's global irradiation.
 *
 * Source: Erbs, Klein and Duffie (1982), Solar Energy 28(4), 293-302 (Duffie & Beckman eq. 2.10.1).
 *
 * @param kt clearness index of the hour: global over extraterrestrial on the horizontal; above 0.8 it no longer counts
 */
export function diffuseFraction(kt: number): number {
  if (kt <= 0.22) return 1 - 0.09 * kt;
  if (kt > 0.8) return 0.165;
  return 0.9511 - 0.1604 * kt + 4.388 * kt ** 2 - 16.638 * kt ** 3 + 12.336 * kt ** 4;
}

/** Sunset hour angle that parts the winter curves from those of the other seasons. */
const winterSunsetDeg = 81.4;

/**
 * Diffuse share of a day's global irradiation.
 *
 * Source: Erbs, Klein and Duffie (1982), Solar Energy 28(4), 293-302 (Duffie & Beckman eq. 2.11.1).
 *
 * @param kt clearness index of the day
 * @param sunsetDeg sunset hour angle, degrees
 */
export function dailyDiffuseFraction(kt: number, sunsetDeg: number): number {
  if (sunsetDeg <= winterSunsetDeg) {
    return kt < 0.715 ? 1 - 0.2727 * kt + 2.4495 * kt ** 2 - 11.9514 * kt ** 3 + 9.3879 * kt ** 4 : 0.143;
  }
  return kt < 0.722 ? 1 + 0.2832 * kt - 2.5557 * kt ** 2 + 0.8448 * kt ** 3 : 0.175;
}

/**
 * Diffuse share of a month's global irradiation.
 *
 * Source: Erbs, Klein and Duffie (1982), Solar Energy 28(4), 293-302 (Duffie & Beckman eq. 2.12.1). The curves hold
 * for clearness indices of 0.3 to 0.8; outside, the value at the nearer end is returned.
 *
 * @param kt mean clearness index of the month
 * @param sunsetDeg sunset hour angle of the month's average day, degrees
 */
export function monthlyDiffuseFraction(kt: number, sunsetDeg: number): number {
  const k = Math.min(0.8, Math.max(0.3, kt));
  return sunsetDeg <= winterSunsetDeg
    ? 1.391 - 3.56 * k + 4.189 * k ** 2 - 2.137 * k ** 3
    : 1.311 - 3.022 * k + 3.427 * k ** 2 - 1.821 * k ** 3;
}
