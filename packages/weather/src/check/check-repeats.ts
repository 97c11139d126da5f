import { daysPerYear, hoursPerYear, hourText } from '@wintergap/ground';
import type { Notice, WeatherYear } from '../weather-year.js';

/** A thermometer or anemometer that reads the same for longer than this has stuck. */
const longestSameH = 24;
/** Global irradiance by day does not repeat to the last digit for longer than this. */
const longestSameDaylightH = 4;

/** Looks for days copied from one another and readings that stay the same too long. */
export function repeatNotices(weather: WeatherYear): Notice[] {
  return [...copiedDays(weather), ...stuck(weather), ...constantColumns(weather)];
}

function copiedDays(weather: WeatherYear): Notice[] {
  const { ghiWm2, airC } = weather;
  /** Days by the sum of their irradiance: only those of one sum can be copies. */
  const seen = new Map<number, number[]>();
  let copies = 0;
  let example = '';
  for (let day = 0; day < daysPerYear; day++) {
    const from = day * 24;
    let sum = 0;
    let alike = true;
    for (let h = from; h < from + 24; h++) {
      sum += ghiWm2[h]!;
      alike &&= ghiWm2[h] === ghiWm2[from];
    }
    if (alike) continue;
    const before = seen.get(sum) ?? [];
    const earlier = before.find((other) => sameDay(ghiWm2, from, other * 24) && sameDay(airC, from, other * 24));
    if (earlier === undefined) seen.set(sum, [...before, day]);
    else if (copies++ === 0) example = `${hourText(from).slice(0, 5)} repeats ${hourText(earlier * 24).slice(0, 5)}`;
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

function sameDay(values: Float64Array, from: number, other: number): boolean {
  for (let k = 0; k < 24; k++) if (values[from + k] !== values[other + k]) return false;
  return true;
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

/** Columns that hold one value all year were filled in by the writer of the file and not measured. */
function constantColumns({ albedo, relativeHumidity, pressurePa, windMs }: WeatherYear): Notice[] {
  const named: [string, Float64Array | null][] = [
    ['albedo', albedo],
    ['relative humidity', relativeHumidity],
    ['pressure', pressurePa],
    ['wind', windMs],
  ];
  return named.flatMap(([name, values]) => {
    if (!values?.every((value) => value === values[0])) return [];
    const snow = name === 'albedo' ? ': it does not follow snow' : '';
    const text = `${name} is ${Number(values[0]!.toPrecision(4))} in all hours of the year${snow}`;
    return [{ code: 'constant-column', level: 'note' as const, text, rows: hoursPerYear }];
  });
}
