import { hoursPerYear } from '@wintergap/ground';
import type { WeatherYear } from '../weather-year.js';

/**
 * Snow depth of a year put together from days of others. Copied depths would jump where blocks meet, and a jump up
 * looks like a snowfall that never was. So new snow is added as it fell in the source, settling and melting shrink the
 * depth in the proportion they did there, and bare ground there is bare ground here.
 *
 * @returns m; `null` unless every source has a snow depth
 */
export function joinedSnow(
  sources: readonly WeatherYear[],
  fromYear: Uint16Array,
  fromDay: Uint16Array,
): Float64Array | null {
  const depths = sources.map((source) => source.snowDepthM);
  if (depths.includes(null)) return null;
  const depthM = new Float64Array(hoursPerYear);
  const firstHour = fromDay[0]! * 24;
  let depth = depths[fromYear[0]!]![(firstHour + hoursPerYear - 1) % hoursPerYear]!;
  for (let h = 0; h < hoursPerYear; h++) {
    const day = Math.floor(h / 24);
    const column = depths[fromYear[day]!]!;
    const from = fromDay[day]! * 24 + (h % 24);
    const now = column[from]!;
    const before = column[(from + hoursPerYear - 1) % hoursPerYear]!;
    if (now > before) depth += now - before;
    else if (before > 0) depth *= now / before;
    if (now === 0) depth = 0;
    depthM[h] = depth;
  }
  return depthM;
}
