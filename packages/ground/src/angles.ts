/** Multiply degrees by it to get radians. */
export const radiansPerDegree: number = Math.PI / 180;

/** Degrees clockwise from one azimuth to another, 0 to 360 (not included). */
export function clockwiseDeg(fromDeg: number, toDeg: number): number {
  return (((toDeg - fromDeg) % 360) + 360) % 360;
}

/** How far two directions or longitudes are apart the shorter way round, 0 to 180 degrees. */
export function angleApartDeg(oneDeg: number, otherDeg: number): number {
  return Math.abs(((oneDeg - otherDeg + 540) % 360) - 180);
}
