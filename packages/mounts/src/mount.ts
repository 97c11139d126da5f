/** From a day of the year (0 is 1 January) until the next period begins; the last one runs on through New Year. */
export interface TiltPeriod {
  /** 0 to 364. */
  fromDay: number;
  /** From horizontal, 0 to 90 degrees. */
  tiltDeg: number;
}

/** Days on which a mount that should move does not, both ends included; across New Year where `toDay` is the smaller. */
export interface Stuck {
  fromDay: number;
  toDay: number;
  azimuthDeg: number;
  /** Where not given: a pole keeps the tilt of its season, a one-axis mount that of its axis, a two-axis mount its latitude. */
  tiltDeg?: number | undefined;
}

/** What the motors take: power while they turn, or a measured daily amount. */
export type Drive =
  | {
      kind: 'while-turning';
      powerW: number;
      /** 6 unless given: a circle in an hour, as small worm drives and actuators do. Common practice, no source. */
      degPerMin?: number | undefined;
    }
  | { kind: 'daily'; whPerDay: number };

/** What a mount that moves by motor has beside its geometry. */
export interface Motor {
  drive?: Drive | undefined;
  /** Wind speed, mean of the hour, above which the mount leaves the sun and stands safe. */
  stowAboveMs?: number | undefined;
  stuck?: readonly Stuck[] | undefined;
}

export interface FixedMount {
  kind: 'fixed';
  tiltDeg: number;
  azimuthDeg: number;
}

/** Tilted by hand on given dates. */
export interface SeasonalMount {
  kind: 'seasonal';
  azimuthDeg: number;
  tilts: readonly TiltPeriod[];
}

/** Turns about the vertical after the sun's azimuth; tilted by hand on given dates. */
export interface PoleMount extends Motor {
  kind: 'pole';
  tilts: readonly TiltPeriod[];
  /** The whole turn from one stop to the other, 0 to 360 degrees. */
  turnDeg: number;
  /** Azimuth of the middle of the turn; toward the equator unless given. */
  facingDeg?: number | undefined;
}

/** Turns about a straight axis, level or tilted. */
export interface OneAxisMount extends Motor {
  kind: 'one-axis';
  /** 0 to 90 degrees; 0 is a level axis. */
  axisTiltDeg: number;
  /** Azimuth toward which the axis slopes down; on a level axis either end. The plane at rest faces there. */
  axisAzimuthDeg: number;
  /** Rotation to either side, 0 to 90 degrees. */
  limitDeg: number;
}

/** Faces the sun within its limits. */
export interface TwoAxisMount extends Motor {
  kind: 'two-axis';
  minTiltDeg: number;
  maxTiltDeg: number;
  /** The whole turn in azimuth, 0 to 360 degrees; 360 unless given. */
  turnDeg?: number | undefined;
  /** Azimuth of the middle of the turn; toward the equator unless given. */
  facingDeg?: number | undefined;
}

/** How a plane is held. */
export type Mount = FixedMount | SeasonalMount | PoleMount | OneAxisMount | TwoAxisMount;
