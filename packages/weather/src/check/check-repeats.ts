import { daysPerYear, hoursPerYear, hourText } from '@wintergap/ground';
import type { Notice, WeatherYear } from '../weather-year.js';

/** A thermometer or anemometer that reads the same for longer than this has stuck. */
const longestSameH = 24;
/** Global irradiance by day does not repeat to the last digit for longer than this. */
const longestSameDaylightH = 4;

/** Looks for days copied from one another and readings that stay the same too long. */
export function repeatNotices(weather: WeatherYear): Notice[] {
  return [...copiedDays(weather), ...stuck(weather)];
}

function copiedDays(weather: WeatherYear): Notice[] {
  const seen = new Map<string, number>();
  let copies = 0;
  let example = '';
  for (let day = 0; day < daysPerYear; day++) {
    const ghi = weather.ghiWm2.subarray(day * 24, day * 24 + 24);
    if (ghi.every((value) => value === ghi[0])) continue;
    const key = `${ghi.join()} ${weather.airC.subarray(day * 24, day * 24 + 24).join()}`;
    const earlier = seen.get(key);
    if (earlier === undefined) seen.set(key, day);
    else if (copies++ === 0)
      example = `${hourText(day * 24).slice(0, 5)} repeats ${hourText(earlier * 24).slice(0, 5)}`;
  }
  if (copies === 0) return [];
  return [
    {
      code: 'repeated-days',
      level: copies > 30 ? 'error' : 'warning',
      text: `${copies} days repeat the irradiance and temperature of another day, the first: ${example}`,
      rows: copies * 24,
    },
  ];
}

function stuck(weather: WeatherYear): Notice[] {
  const notices: Notice[] = [];
  const longest = (values: Float64Array, counts: (value: number) => boolean): { start: number; hours: number } => {
    let best = { start: 0, hours: 0 };
    let start = 0;
    for (let h = 1; h <= hoursPerYear; h++) {
      if (h < hoursPerYear && values[h] === values[start] && counts(values[h]!)) continue;
      if (h - start > best.hours && counts(values[start]!)) best = { start, hours: h - start };
      start = h;
    }
    return best;
  };
  const air = longest(weather.airC, () => true);
  const wind = longest(weather.windMs, (value) => value > 0);
  const ghi = longest(weather.ghiWm2, (value) => value > 50);
  const wholeYear = (run: { hours: number }): boolean => run.hours === hoursPerYear;
  const report = (name: string, run: { start: number; hours: number }): void => {
    notices.push({
      code: 'stuck-reading',
      level: 'warning',
      text: `${name} stays the same for ${run.hours} hours from ${hourText(run.start)}`,
      rows: run.hours,
    });
  };
  if (air.hours > longestSameH) report('air temperature', air);
  if (wind.hours > longestSameH && !wholeYear(wind)) report('wind', wind);
  if (ghi.hours > longestSameDaylightH) report('global irradiance', ghi);
  return notices;
}
