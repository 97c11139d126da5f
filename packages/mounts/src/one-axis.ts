import { radiansPerDegree as rad } from '@wintergap/ground';

/**
 * Rotation of a plane about a straight axis that brings the plane's normal as near to the sun as it can, degrees,
 * -180 to 180; 0 is the rest position, positive turns clockwise seen from the axis' upper end down along it: on an axis
 * that slopes down to the south, to the west.
 *
 * Source: Marion & Dobos (2013), NREL/TP-6A20-58891, the quadrant correction being the two-argument arctangent.
 */
export function axisRotationDeg(
  zenithDeg: number,
  sunAzimuthDeg: number,
  axisTiltDeg: number,
  axisAzimuthDeg: number,
): number {
  const z = zenithDeg * rad;
  const ahead = (sunAzimuthDeg - axisAzimuthDeg) * rad;
  const sinZ = Math.sin(z);
  return (
    Math.atan2(
      sinZ * Math.sin(ahead),
      sinZ * Math.cos(ahead) * Math.sin(axisTiltDeg * rad) + Math.cos(z) * Math.cos(axisTiltDeg * rad),
    ) / rad
  );
}

/**
 * Writes tilt and azimuth of a plane that is turned about its axis to `out[0]` and `out[1]`, degrees.
 *
 * Source: Marion & Dobos (2013).
 *
 * @param rotationDeg -90 to 90
 */
export function rotatedPlane(
  rotationDeg: number,
  axisTiltDeg: number,
  axisAzimuthDeg: number,
  out: Float64Array,
): void {
  const cosTilt = Math.cos(rotationDeg * rad) * Math.cos(axisTiltDeg * rad);
  const sinTilt = Math.sqrt(1 - cosTilt * cosTilt);
  const turn = sinTilt > 1e-9 ? Math.asin(Math.min(1, Math.max(-1, Math.sin(rotationDeg * rad) / sinTilt))) / rad : 0;
  out[0] = Math.acos(Math.min(1, cosTilt)) / rad;
  out[1] = (axisAzimuthDeg + turn + 360) % 360;
}
