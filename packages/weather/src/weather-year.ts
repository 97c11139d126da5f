/** Where a weather year belongs. Fields a file does not state are absent. */
export interface WeatherPlace {
  name?: string;
  /** Degrees, north positive. */
  latitudeDeg?: number;
  /** Degrees, east positive. */
  longitudeDeg?: number;
  /** Hours that local standard time is ahead of UTC, east positive. */
  utcOffsetH?: number;
  elevationM?: number;
}

/** Something a reader of results should know about the weather they came from. */
export interface Notice {
  /** Stable, for programs: `typical-year`, `leap-day-dropped`. */
  code: string;
  level: 'note' | 'warning' | 'error';
  text: string;
  /** How many rows or hours it concerns. */
  rows?: number;
}

/** `rejected` weather is not to be used for a year, `usable` weather has warnings, `good` weather has none. */
export type Verdict = 'good' | 'usable' | 'rejected';

/** Whether a weather year can be trusted, and why not. */
export interface WeatherJudgement {
  verdict: Verdict;
  /** The verdict in one line, file first. */
  line: string;
  /** From reading the file and from checking it. */
  notices: Notice[];
}

/**
 * The weather of one year at one place. Entry h of every array is the mean (or sum, for precipitation) of the hour
 * [h, h+1) in local standard time, 1 January 00:00 first, no leap day; 8760 entries, none NaN.
 */
export interface WeatherYear {
  /** File name or description. */
  source: string;
  kind: 'epw' | 'tmy3' | 'table' | 'power' | 'made';
  place: WeatherPlace;
  /** Global irradiance on the horizontal. */
  ghiWm2: Float64Array;
  /** Beam irradiance on a plane that faces the sun. */
  dniWm2: Float64Array;
  /** Diffuse irradiance on the horizontal. */
  dhiWm2: Float64Array;
  airC: Float64Array;
  windMs: Float64Array;
  /** `null` when the source has none. */
  snowDepthM: Float64Array | null;
  /** Water equivalent of rain and snow; `null` when the source has none. */
  precipitationMm: Float64Array | null;
  albedo: Float64Array | null;
  /** 0 to 1. */
  relativeHumidity: Float64Array | null;
  pressurePa: Float64Array | null;
  /** Whether beam and diffuse were in the source or were split from the global irradiance. */
  splitFrom: 'file' | 'erbs';
  notices: Notice[];
  /** Line of the file that holds an hour, 0 where none does; only for years read from a file. */
  lineOfHour?: Int32Array;
  /** 0 where an hour was measured, 1 where a gap was bridged, 2 where it was filled from other days. */
  mended?: Uint8Array;
  /** What `judgeWeather` found, where it was asked. */
  judgement?: WeatherJudgement;
}
