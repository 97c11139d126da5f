/**
 * Parts an hour's light into beam and diffuse so that a horizontal plane gets the global irradiance back exactly.
 * Writes the beam on a plane facing the sun, constant over the points with the sun up, to `out[0]`, and the diffuse
 * irradiance on the horizontal, mean of the hour, to `out[1]`.
 *
 * In a full hour the beam is the given one. In the hours of sunrise and sunset, sources differ: some average the beam
 * over the hour, some over its sunlit part. The beam that closes the hour is taken, but none outside these two
 * readings, which would come from dividing by a small cosine. What beam does not account for is diffuse.
 *
 * @param upShare share of the hour's points with the sun up
 * @param meanCosZenith cosine of the zenith angle averaged over the hour, 0 counting while the sun is down
 */
export function partHour(
  ghiWm2: number,
  dniWm2: number,
  dhiWm2: number,
  upShare: number,
  meanCosZenith: number,
  extraterrestrialNormalWm2: number,
  out: Float64Array,
): void {
  let beam = 0;
  if (meanCosZenith > 0) {
    const closing = (ghiWm2 - dhiWm2) / meanCosZenith;
    beam = Math.min(Math.max(closing, dniWm2), dniWm2 / upShare, extraterrestrialNormalWm2);
    if (beam * meanCosZenith > ghiWm2) beam = ghiWm2 / meanCosZenith;
  }
  out[0] = beam;
  out[1] = Math.max(0, ghiWm2 - beam * meanCosZenith);
}
