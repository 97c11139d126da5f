/**
 * Global irradiance on the horizontal under a cloudless sky, W/m2; a shape and a rough ceiling, as it knows neither
 * haze nor height.
 *
 * Source: Haurwitz (1945), J. Meteorology 2, 154-166, in the form of Reno, Hansen & Stein (2012), SAND2012-2389, eq. 18.
 */
export function clearSkyWm2(cosZenith: number): number {
  return cosZenith > 0 ? 1098 * cosZenith * Math.exp(-0.057 / cosZenith) : 0;
}
