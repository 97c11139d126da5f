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

/**
 * The weather of one year at one place. Entry h of every array is the mean (or sum, for precipitation) of the hour
 * [h, h+1) in local standard time, 1 January 00:00 first, no leap day; 8760 entries, none NaN.
 */
export interface WeatherYear {
  /** File name or description. */
  source: string;
  kind: 'epw' | 'tmy3' | 'table' | 'made';
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
}
