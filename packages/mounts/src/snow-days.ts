import { daysInMonth, hoursPerYear, mustHold, OutOfRangeError } from '@wintergap/ground';

/** Least and mean fall of a snowy day, m: an inch, and about the mean of inland winters. Common practice, no source. */
const leastFallM = 0.03;
const meanFallM = 0.05;
/** Melt per degree above freezing and hour, m: 5 mm of water a day from snow of 250 kg/m3. Common practice, no source. */
const meltMPerKH = 0.02 / 24;
/** Lying snow settles by 4 % a day. Common practice, no source. */
const settlingPerH = 0.04 / 24;

/**
 * A made depth of snow on the ground, m, where only the number of days with fresh snow in each month is known.
 *
 * The coldest days of a month, with a good deal of chance, get snow; each fall lasts four hours and brings 3 cm and
 * more, 5 cm on average. Snow settles, and melts by degrees above freezing. It is a rule for telling snowy weeks from
 * bare ones, not a record; the same seed makes the same winter. The year begins with the snow it ends with.
 *
 * @param snowyDays days with fresh snow in each month, January first
 * @param seed any whole number
 */
export function snowDepthFromDays(snowyDays: readonly number[], airC: Float64Array, seed: number): Float64Array {
  if (snowyDays.length !== 12) throw new OutOfRangeError(`snowyDays must have 12 months, got ${snowyDays.length}`);
  mustHold('airC', airC, hoursPerYear, -90, 70);
  if (!Number.isSafeInteger(seed)) throw new OutOfRangeError(`seed must be a whole number, got ${seed}`);
  const random = randomNumbers(seed);
  const fallM = new Float64Array(hoursPerYear);
  let firstDay = 0;
  daysInMonth.forEach((length, month) => {
    const wanted = snowyDays[month]!;
    if (!(wanted >= 0 && wanted <= 31)) throw new OutOfRangeError(`snowyDays must be 0 to 31, got ${wanted}`);
    const days = Array.from({ length }, (_, i) => firstDay + i).map((day) => ({
      day,
      // Four degrees of chance: snow falls on days that are not the coldest too.
      reluctance: Math.max(-6, dayMean(airC, day)) + 8 * random(),
      startHour: Math.floor(random() * 21),
      depthM: leastFallM - Math.log(1 - random()) * (meanFallM - leastFallM),
    }));
    days.sort((a, b) => a.reluctance - b.reluctance);
    for (const { day, startHour, depthM } of days.slice(0, Math.round(wanted))) {
      for (let hour = startHour; hour < startHour + 4; hour++) fallM[day * 24 + hour] = depthM / 4;
    }
    firstDay += length;
  });
  const depthM = new Float64Array(hoursPerYear);
  let depth = 0;
  for (let pass = 0; pass < 2; pass++) {
    for (let h = 0; h < hoursPerYear; h++) {
      const settled = depth * (1 - settlingPerH) - Math.max(0, airC[h]!) * meltMPerKH;
      depth = Math.max(0, settled) + fallM[h]!;
      if (depth < 0.001) depth = 0;
      depthM[h] = depth;
    }
  }
  return depthM;
}

function dayMean(values: Float64Array, day: number): number {
  let sum = 0;
  for (let h = day * 24; h < day * 24 + 24; h++) sum += values[h]!;
  return sum / 24;
}

/** Random numbers of 0 to 1 by the mixing steps of MurmurHash3 (public domain) over a counter. */
function randomNumbers(seed: number): () => number {
  let counter = (seed ^ Math.floor(seed / 4294967296)) | 0;
  return () => {
    counter = (counter + 0x9e3779b9) | 0;
    let word = Math.imul(counter ^ (counter >>> 16), 0x85ebca6b);
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
    return ((word ^ (word >>> 16)) >>> 0) / 4294967296;
  };
}
