import { hoursPerYear, monthSpan } from '@wintergap/ground';

/** Middle of each month, hours from the start of the year. */
const middle = Array.from({ length: 12 }, (_, m) => (monthSpan(m).fromHour + monthSpan(m).toHour) / 2);

/** Fills a year with straight lines between values at the middles of the months, December joined to January. */
function joinMiddles(knots: ArrayLike<number>, hours: Float64Array): void {
  for (let m = 0; m < 12; m++) {
    const next = (m + 1) % 12;
    const start = middle[m]!;
    const span = (middle[next]! - start + hoursPerYear) % hoursPerYear;
    const slope = (knots[next]! - knots[m]!) / span;
    for (let i = 0; i < span; i++) {
      const h = Math.ceil(start - 0.5) + i;
      hours[h % hoursPerYear] = knots[m]! + slope * (h + 0.5 - start);
    }
  }
}

/** Mean of each month of an hourly year. */
export function monthMeans(hours: Float64Array): Float64Array {
  const means = new Float64Array(12);
  for (let m = 0; m < 12; m++) {
    const { fromHour, toHour } = monthSpan(m);
    let sum = 0;
    for (let h = fromHour; h < toHour; h++) sum += hours[h]!;
    means[m] = sum / (toHour - fromHour);
  }
  return means;
}

/**
 * A year of hourly values without steps between the months and with exactly the given monthly means: straight lines
 * between the middles of the months, whose values are corrected until the means are met. Each correction at least
 * halves what is left, so sixty end at the last bit.
 */
export function smoothThroughMonths(wantedMeans: ArrayLike<number>): Float64Array {
  const hours = new Float64Array(hoursPerYear);
  const knots = Float64Array.from(wantedMeans);
  for (let pass = 0; pass < 60; pass++) {
    joinMiddles(knots, hours);
    const means = monthMeans(hours);
    for (let m = 0; m < 12; m++) knots[m]! += wantedMeans[m]! - means[m]!;
  }
  return hours;
}
