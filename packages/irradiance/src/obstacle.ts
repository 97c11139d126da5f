/** Something that stands between a range of directions and the array: a wood, a house, one tree. */
export interface Obstacle {
  /** First azimuth it covers, degrees clockwise from north. */
  fromDeg: number;
  /** Last azimuth it covers, clockwise of the first; 0 to 360 is all round. */
  toDeg: number;
  /** Height of its top above the ground the array stands on, m. */
  topM: number;
  /** Horizontal distance from the array, m. */
  distanceM: number;
  /** Share of the light that comes through, 0 to 1; opaque unless given. */
  clear?: { leafOn: number; leafOff: number } | undefined;
}

/** The days (0 to 364) on which leaves come out and are down; across New Year where `onDay` is the later one. */
export interface LeafSeason {
  onDay: number;
  offDay: number;
}
