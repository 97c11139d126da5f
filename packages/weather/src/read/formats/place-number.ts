import { WeatherError } from '../../weather-error.js';

// Elevations reach from the Dead Sea to the highest peaks; offsets from UTC-12 to UTC+14.
const limits = {
  latitude: [-90, 90],
  longitude: [-180, 180],
  'time zone': [-12, 14],
  elevation: [-500, 9000],
} as const;

/** A number that says where a weather file belongs, checked. */
export function placeNumber(
  field: string | undefined,
  what: keyof typeof limits,
  source: string,
  line: number,
): number {
  const text = (field ?? '').trim();
  const value = Number(text);
  const [low, high] = limits[what];
  if (text === '' || !(value >= low && value <= high)) {
    throw new WeatherError(source, line, `${what} is "${text}", expected a number from ${low} to ${high}`);
  }
  return value;
}
