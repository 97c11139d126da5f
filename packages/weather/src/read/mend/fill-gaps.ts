import { hoursPerYear } from '@wintergap/ground';

/** A run of missing hours. It may wrap around the end of the year. */
export interface Gap {
  start: number;
  hours: number;
}

/** Runs of NaN, the year taken as a ring. */
export function findGaps(values: Float64Array): Gap[] {
  const gaps: Gap[] = [];
  if (!values.includes(Number.NaN)) return gaps;
  let first = 0;
  while (first < hoursPerYear && Number.isNaN(values[first]!)) first++;
  if (first === hoursPerYear) return [{ start: 0, hours: hoursPerYear }];
  for (let i = 1; i <= hoursPerYear; i++) {
    const start = (first + i) % hoursPerYear;
    if (!Number.isNaN(values[start]!)) continue;
    let hours = 1;
    while (Number.isNaN(values[(start + hours) % hoursPerYear]!)) hours++;
    gaps.push({ start, hours });
    i += hours;
  }
  return gaps;
}

/** Straight line from the hour before a gap to the hour after it. */
export function bridgeGap(values: Float64Array, gap: Gap): void {
  const before = values[(gap.start + hoursPerYear - 1) % hoursPerYear]!;
  const after = values[(gap.start + gap.hours) % hoursPerYear]!;
  for (let i = 0; i < gap.hours; i++) {
    values[(gap.start + i) % hoursPerYear] = before + ((after - before) * (i + 1)) / (gap.hours + 1);
  }
}

/** Repeats the hour before a gap. */
export function holdGap(values: Float64Array, gap: Gap): void {
  const before = values[(gap.start + hoursPerYear - 1) % hoursPerYear]!;
  for (let i = 0; i < gap.hours; i++) values[(gap.start + i) % hoursPerYear] = before;
}

/** Fills a gap with one value. */
export function setGap(values: Float64Array, gap: Gap, value: number): void {
  for (let i = 0; i < gap.hours; i++) values[(gap.start + i) % hoursPerYear] = value;
}
