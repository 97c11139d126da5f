export { type BestTilt, bestTilt, bestTwoTilts, type TiltLimits, type TwoTilts } from './best-tilt.js';
export { driveLoadW } from './drive-load.js';
export { groundAlbedo } from './ground-albedo.js';
export type {
  Drive,
  FixedMount,
  Motor,
  Mount,
  OneAxisMount,
  PoleMount,
  SeasonalMount,
  Stuck,
  TiltPeriod,
  TwoAxisMount,
} from './mount.js';
export { axisRotationDeg, rotatedPlane } from './one-axis.js';
export { hourlyTiltDeg, pointing } from './pointing.js';
export { fullCatch, type SnowCatch } from './snow-catch.js';
export { type Clearing, type SnowCoverInput, snowCover, snowLossByString } from './snow-cover.js';
export { snowDepthFromDays } from './snow-days.js';
