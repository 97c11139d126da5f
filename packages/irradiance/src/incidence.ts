import { radiansPerDegree as rad } from '@wintergap/ground';

/**
 * Cosine of the angle between the sunbeam and the normal of a plane; negative when the sun is behind the plane.
 *
 * Source: Reda & Andreas (2004), Solar Energy 76(5), 577-589, eq. 47; Duffie & Beckman (2013), eq. 1.6.3.
 *
 * @param zenithDeg zenith angle of the sun, degrees
 * @param sunAzimuthDeg azimuth of the sun, degrees clockwise from north
 * @param tiltDeg tilt of the plane from horizontal, degrees
 * @param planeAzimuthDeg azimuth that the plane faces, degrees clockwise from north
 */
export function cosIncidence(
  zenithDeg: number,
  sunAzimuthDeg: number,
  tiltDeg: number,
  planeAzimuthDeg: number,
): number {
  const z = zenithDeg * rad;
  const b = tiltDeg * rad;
  return Math.cos(z) * Math.cos(b) + Math.sin(z) * Math.sin(b) * Math.cos((sunAzimuthDeg - planeAzimuthDeg) * rad);
}
