import { hoursPerYear } from '@wintergap/ground';
import { monthMeans, smoothThroughMonths } from './monthly-smooth.js';
import type { RandomStream } from './random.js';

/**
 * Departure from the day's mean temperature as a share of the day's swing. Mean 0, from lowest to highest about 1.
 *
 * Source: Erbs, Klein & Beckman (1983), Estimation of degree-days and ambient temperature bin data from
 * monthly-average temperatures, ASHRAE Journal 25(6), 60-65; coefficients from memory.
 *
 * @param solarHour 0 to 24, 12 at solar noon
 */
export function courseOfTemperature(solarHour: number): number {
  const t = ((solarHour - 1) * 2 * Math.PI) / 24;
  return (
    0.4632 * Math.cos(t - 3.805) +
    0.0984 * Math.cos(2 * t - 0.36) +
    0.0168 * Math.cos(3 * t - 0.822) +
    0.0138 * Math.cos(4 * t - 3.513)
  );
}

/**
 * Mean daily swing, K, when a climate table does not give it: clearness = 0.16 sqrt(swing), kept within 4 to 16 K.
 *
 * Source: Hargreaves & Samani (1982), with the coefficient for inland places in FAO Irrigation and Drainage Paper 56
 * (1998), eq. 50; there it gives clearness from the swing. The limits are common practice, no source.
 */
export function swingFromClearness(clearness: number): number {
  return Math.min(16, Math.max(4, (clearness / 0.16) ** 2));
}

/** What the air temperature of a made year depends on. */
export interface TemperatureCauses {
  /** Monthly means to be met, degC. */
  meanC: ArrayLike<number>;
  /** Mean of daily highest less daily lowest, K, for each month. */
  swingK: ArrayLike<number>;
  /** Daily clearness index; any number on days without sun. */
  clearness: Float64Array;
  /** Daily extraterrestrial irradiation on the horizontal, kWh/m2. */
  extraterrestrialKWh: Float64Array;
  /** Month, 0 to 11, of each day. */
  monthOfDay: ArrayLike<number>;
  /** Local standard time of solar noon, h. */
  solarNoonH: number;
}

/**
 * Made hourly air temperature: a smooth season, departures of whole days that persist, and a daily course whose swing
 * follows the day's clearness. Months have exactly the given means, and very nearly the given swings.
 *
 * How much of a day's departure goes with its clearness depends on the season: where the day brings less than 7.1
 * kWh/m2 above the atmosphere, clear days are colder than dull ones (long clear nights, dry air from the north), up to
 * a correlation of -0.45; where it brings more, clear days are warmer, up to +0.45. Swing and clearness are tied
 * loosely in winter and closely in summer. Lag-one memory of the days is 0.65 and their spread 3 K in the warmest
 * month, growing by 0.12 K for each degree that a month is colder. These figures describe the typical years of
 * Chicago, New York and Mannheim; they have no other source.
 */
export function wanderingTemperature(causes: TemperatureCauses, random: RandomStream): Float64Array {
  const { meanC, swingK, clearness, extraterrestrialKWh, monthOfDay, solarNoonH } = causes;
  const clearnessMean = meansOfMonths(clearness, monthOfDay);
  const departures = wanderingDays(causes, clearnessMean, random);

  const swings = new Float64Array(clearness.length);
  for (let day = 0; day < swings.length; day++) {
    const month = monthOfDay[day]!;
    const tie = Math.min(0.85, Math.max(0.15, 0.1 * extraterrestrialKWh[day]!));
    const ratio = clearnessMean[month]! > 0 ? clearness[day]! / clearnessMean[month]! : 1;
    swings[day] = swingK[month]! * Math.max(0.25, 1 - tie + tie * ratio);
  }

  // Changes from day to day widen the span between lowest and highest, so the course is narrowed until it fits.
  const season = smoothThroughMonths(meanC);
  const airC = new Float64Array(hoursPerYear);
  const narrowing = new Float64Array(12).fill(1);
  const courses = Float64Array.from({ length: 24 }, (_, hour) => courseOfTemperature((hour + 36.5 - solarNoonH) % 24));
  for (let pass = 0; pass < 6; pass++) {
    for (let h = 0; h < hoursPerYear; h++) {
      const narrow = narrowing[monthOfDay[Math.floor(h / 24)]!]!;
      airC[h] = betweenNoons(departures, h) + narrow * betweenNoons(swings, h) * courses[h % 24]!;
    }
    const realised = meanDailySpans(airC, season, monthOfDay);
    for (let m = 0; m < 12; m++) narrowing[m] = Math.min(2, (narrowing[m]! * swingK[m]!) / Math.max(0.1, realised[m]!));
  }
  const means = monthMeans(airC);
  const wanted = Float64Array.from(meanC, (mean, m) => mean - means[m]!);
  const smooth = smoothThroughMonths(wanted);
  for (let h = 0; h < hoursPerYear; h++) airC[h]! += smooth[h]!;
  return airC;
}

/** Departures of the days' means from the season, as they follow from clearness and from the day before, K. */
function wanderingDays(causes: TemperatureCauses, clearnessMean: Float64Array, random: RandomStream): Float64Array {
  const { clearness, extraterrestrialKWh, monthOfDay, meanC } = causes;
  let warmest = meanC[0]!;
  for (let m = 1; m < 12; m++) warmest = Math.max(warmest, meanC[m]!);
  const days = new Float64Array(clearness.length);
  const memory = 0.65;
  const fresh = Math.sqrt(1 - memory * memory);
  let wander = random.normal();
  for (let day = 0; day < days.length; day++) {
    const month = monthOfDay[day]!;
    const outside = extraterrestrialKWh[day]!;
    const link = outside > 0.05 ? Math.min(0.45, Math.max(-0.45, (outside - 7.1) / 8)) : 0;
    // 0.15 is the usual spread of daily clearness within a month.
    const brightness = (clearness[day]! - clearnessMean[month]!) / 0.15;
    wander = memory * wander + fresh * random.normal();
    const departure = link * brightness + Math.sqrt(1 - link * link) * wander;
    const spreadK = 3 + 0.12 * (warmest - meanC[month]!);
    days[day] = spreadK * Math.min(3, Math.max(-3, departure));
  }
  return days;
}

/** Mean of a daily series in each month. */
function meansOfMonths(days: Float64Array, monthOfDay: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(12);
  const counts = new Float64Array(12);
  for (let day = 0; day < days.length; day++) {
    sums[monthOfDay[day]!]! += days[day]!;
    counts[monthOfDay[day]!]!++;
  }
  return sums.map((sum, m) => sum / counts[m]!);
}

/** Mean over each month of a day's highest less its lowest hourly value. */
function meanDailySpans(hours: Float64Array, season: Float64Array, monthOfDay: ArrayLike<number>): Float64Array {
  const spans = new Float64Array(monthOfDay.length);
  for (let day = 0; day < spans.length; day++) {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let h = day * 24; h < day * 24 + 24; h++) {
      low = Math.min(low, hours[h]! + season[h]!);
      high = Math.max(high, hours[h]! + season[h]!);
    }
    spans[day] = high - low;
  }
  return meansOfMonths(spans, monthOfDay);
}

/** Value of a daily series at an hour, on straight lines between noons; the year joins its own end. */
export function betweenNoons(days: Float64Array, h: number): number {
  const position = (h + 0.5) / 24 - 0.5;
  const before = Math.floor(position);
  const share = position - before;
  const n = days.length;
  return days[(before + n) % n]! * (1 - share) + days[(before + 1) % n]! * share;
}
