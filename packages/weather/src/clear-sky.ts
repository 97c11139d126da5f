/**
 * Global irradiance on the horizontal under a clear sky, W/m2.
 *
 * Source: Haurwitz (1945), J. Meteorology 2, 154-166, with the constants of Reno, Hansen and Stein,
 * SAND2012-2389, eq. 18. No turbidity and no elevation: a shape and a rough ceiling, not a forecast.
 */
export function clearSkyWm2(cosZenith: number): number {
  return cosZenith > 0 ? 1098 * cosZenith * Math.exp(-0.057 / cosZenith) : 0;
}
