import { hoursPerYear } from '@wintergap/ground';
import type { WeatherYear } from './weather-year.js';

// Degree-day melt, 4 mm of water for each degree above freezing and day: the middle of the range that Hock (2003),
// J. Hydrology 282, 104-115, collects for snow in the open (about 2.5 to 5.5). From memory.
const meltMmPerKDay = 4;
// All snow up to 0 degC, all rain from 2 degC, in proportion between: about the transition of
// US Army Corps of Engineers (1956), Snow Hydrology. From memory.
const allSnowC = 0;
const allRainC = 2;
// Fresh snow 100 kg/m3, settling towards 300 with a rate of 0.01 per hour: Verseghy (1991), Int. J. Climatol. 11,
// 111-133. From memory.
const freshKgM3 = 100;
const settledKgM3 = 300;
const settlingPerH = 0.01;

const coldHours = 400;

/** Whether the snow depths of a weather year can be believed: some are there, or the place has no winter. */
export function hasSnowData(weather: WeatherYear): boolean {
  return weather.snowDepthM !== null && !isSuspiciouslyBare(weather);
}

/** Snow depth is 0 all year although the place has weeks of frost: the file's writer had no depths. */
export function isSuspiciouslyBare(weather: WeatherYear): boolean {
  if (!weather.snowDepthM?.every((depth) => depth === 0)) return false;
  return frostHours(weather) >= coldHours;
}

export function frostHours(weather: WeatherYear): number {
  let hours = 0;
  for (let h = 0; h < hoursPerYear; h++) if (weather.airC[h]! < 0) hours++;
  return hours;
}

/**
 * Snow depth of each hour, m: the file's own where it can be believed, else built from precipitation and air
 * temperature, else `null`.
 *
 * Snow water: gains the snow part of the precipitation, melts by degree-days. Density: fresh snow settles with age.
 * The year is run twice so that December's snow lies on 1 January.
 */
export function snowDepthFrom(weather: WeatherYear): Float64Array | null {
  if (hasSnowData(weather)) return weather.snowDepthM;
  const { precipitationMm, airC } = weather;
  if (!precipitationMm) return null;
  const depthM = new Float64Array(hoursPerYear);
  let waterMm = 0;
  let densityKgM3 = freshKgM3;
  const settling = Math.exp(-settlingPerH);
  for (let pass = 0; pass < 2; pass++) {
    for (let h = 0; h < hoursPerYear; h++) {
      const air = airC[h]!;
      densityKgM3 = settledKgM3 - (settledKgM3 - densityKgM3) * settling;
      const snowShare = Math.min(1, Math.max(0, (allRainC - air) / (allRainC - allSnowC)));
      const freshMm = precipitationMm[h]! * snowShare;
      if (freshMm > 0) {
        // Depths add up, so densities mix by their volume.
        const volume = waterMm / densityKgM3 + freshMm / freshKgM3;
        waterMm += freshMm;
        densityKgM3 = waterMm / volume;
      }
      if (air > 0) waterMm = Math.max(0, waterMm - (meltMmPerKDay / 24) * air);
      if (waterMm === 0) densityKgM3 = freshKgM3;
      // 1 mm of water is 1 kg/m2.
      depthM[h] = waterMm / densityKgM3;
    }
  }
  return depthM;
}
