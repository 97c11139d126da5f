/** Degrees clockwise from one azimuth to another, 0 to 360 (not included). */
export function clockwise(fromDeg: number, toDeg: number): number {
  return (((toDeg - fromDeg) % 360) + 360) % 360;
}
