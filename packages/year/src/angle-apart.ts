/** How far two directions or longitudes are apart the shorter way round, 0 to 180 degrees. */
export const angleApartDeg = (one: number, other: number): number => Math.abs(((one - other + 540) % 360) - 180);
