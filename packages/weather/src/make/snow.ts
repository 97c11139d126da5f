import { hoursPerYear } from '@wintergap/ground';
import type { MonthlyMeans } from './monthly-means.js';
import type { RandomStream } from './random.js';

/** What the snow of a made year depends on. */
export interface SnowCauses {
  snow: NonNullable<MonthlyMeans['snow']>;
  airC: Float64Array;
  /** Daily clearness index. */
  clearness: Float64Array;
  /** Month, 0 to 11, of each day. */
  monthOfDay: ArrayLike<number>;
}

/**
 * Made depth of snow on the ground, m. Each month has its number of days with new snow; the dull and not too warm days
 * get it, some chance aside. Depths of single falls vary much as in an exponential distribution and sum to the month's.
 * A fall lasts eight hours of its day. Lying snow settles by 4 % a day and melts by 2 cm a day for each degree above
 * freezing (a degree-day factor of 5 mm of water in snow of 250 kg/m3). All of this is common practice, no source.
 * The year begins with the snow it ends with.
 */
export function snowDepth(causes: SnowCauses, random: RandomStream): Float64Array {
  const { airC } = causes;
  const fallM = spreadOverHours(dailyFalls(causes, random), random);
  const depthM = new Float64Array(hoursPerYear);
  let depth = 0;
  // Twice round the year: the first time finds the snow lying on 1 January.
  for (let h = 0; h < 2 * hoursPerYear; h++) {
    const hour = h % hoursPerYear;
    const melt = Math.max(0, airC[hour]!) * (0.02 / 24);
    depth = Math.max(0, depth * (1 - 0.04 / 24) - melt) + fallM[hour]!;
    depthM[hour] = depth;
  }
  return depthM;
}

/** New snow of each hour: eight hours of its day, beginning at any hour that leaves them room. */
function spreadOverHours(dailyM: Float64Array, random: RandomStream): Float64Array {
  const hourlyM = new Float64Array(hoursPerYear);
  for (let day = 0; day < dailyM.length; day++) {
    const from = day * 24 + random.below(17);
    for (let h = from; h < from + 8; h++) hourlyM[h] = dailyM[day]! / 8;
  }
  return hourlyM;
}

/** New snow of each day, m. */
function dailyFalls({ snow, airC, clearness, monthOfDay }: SnowCauses, random: RandomStream): Float64Array {
  const falls = new Float64Array(clearness.length);
  for (let month = 0; month < 12; month++) {
    const days: { day: number; reluctance: number }[] = [];
    let clearnessSum = 0;
    for (let day = 0; day < falls.length; day++) {
      if (monthOfDay[day] !== month) continue;
      clearnessSum += clearness[day]!;
      let airSum = 0;
      for (let h = day * 24; h < day * 24 + 24; h++) airSum += airC[h]!;
      days.push({ day, reluctance: Math.max(0, airSum / 24) / 3 + random.uniform() });
    }
    const meanClearness = clearnessSum / days.length;
    for (const candidate of days) {
      if (meanClearness > 0) candidate.reluctance += clearness[candidate.day]! / meanClearness;
    }
    days.sort((a, b) => a.reluctance - b.reluctance || a.day - b.day);
    const chosen = days.slice(0, Math.round(snow.fallDays[month]!));
    const parts = chosen.map(() => -Math.log(1 - random.uniform()) + 0.2);
    const partSum = parts.reduce((sum, part) => sum + part, 0);
    const monthM = snow.fallM ? snow.fallM[month]! : 0.03 * chosen.length;
    chosen.forEach(({ day }, i) => {
      falls[day] = (monthM * parts[i]!) / partSum;
    });
  }
  return falls;
}
