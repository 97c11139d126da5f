import { mean, sampleCorrelation, standardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { cosWhileUp, sunOf } from '../sun-of-place.js';
import { clearestSky, extraterrestrialHorizontal } from './ceiling.js';
import { hourlyClearness, scatteredHours, smoothHours } from './hours.js';
import { RandomStream } from './random.js';

const place = { latitudeDeg: 46.9, longitudeDeg: -90, utcOffsetH: -6 };
const sun = sunOf(place);
const outside = extraterrestrialHorizontal(sun);
const ceiling = clearestSky(sun, 430);

const daySums = (clearness: (day: number) => number): Float64Array => {
  const days = new Float64Array(365);
  for (let h = 0; h < 8760; h++) days[Math.floor(h / 24)]! += outside[h]!;
  return days.map((sum, day) => sum * clearness(day));
};

function checkDays(hours: Float64Array, sums: Float64Array): void {
  expect(hours.every((wm2, h) => wm2 >= 0 && wm2 <= ceiling[h]!)).toBe(true);
  for (let day = 0; day < 365; day++) {
    let sum = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) sum += hours[h]!;
    expect(Math.abs(sum / sums[day]! - 1)).toBeLessThan(1e-9);
  }
}

test('both ways give each day its sum, no hour above the clearest sky, none below zero', () => {
  const sums = daySums((day) => 0.04 + (day % 12) * 0.05);
  checkDays(smoothHours(sums, sun, outside, ceiling, 12), sums);
  checkDays(scatteredHours(sums, sun, outside, ceiling, new RandomStream(3)), sums);
});

test('a smooth day is highest at noon and the same before and after it', () => {
  const hours = smoothHours(
    daySums(() => 0.5),
    sun,
    outside,
    ceiling,
    12,
  );
  const june = hours.subarray(172 * 24, 173 * 24);
  expect(june.indexOf(Math.max(...june))).toSatisfy((h: number) => h === 11 || h === 12);
  for (let i = 5; i < 12; i++) expect(Math.abs(june[i]! - june[23 - i]!)).toBeLessThan(0.02 * june[12]! + 5);
});

// What the model itself says of the spread and memory of hours on a day of clearness 0.5; moving the day back to its
// sum takes away some of both, so the limits are wide.
test('scattered hours spread about the smooth course and resemble the hour before', () => {
  const hours = scatteredHours(
    daySums(() => 0.5),
    sun,
    outside,
    ceiling,
    new RandomStream(4),
  );
  const departures: number[] = [];
  const before: number[] = [];
  let last = Number.NaN;
  for (let h = 0; h < 8760; h++) {
    const sinAltitude = cosWhileUp(sun, h);
    if (sinAltitude < 0.3) {
      last = Number.NaN;
      continue;
    }
    const model = hourlyClearness(0.5, sinAltitude);
    const departure = (hours[h]! / outside[h]! - model.mean) / model.spread;
    departures.push(departure);
    before.push(last);
    last = departure;
  }
  expect(Math.abs(mean(departures))).toBeLessThan(0.2);
  expect(standardDeviation(departures)).toBeGreaterThan(0.7);
  expect(standardDeviation(departures)).toBeLessThan(1.2);
  const pairs = departures.map((now, i) => [before[i]!, now] as const).filter(([first]) => !Number.isNaN(first));
  const memory = sampleCorrelation(
    pairs.map(([first]) => first),
    pairs.map(([, second]) => second),
  );
  expect(memory).toBeGreaterThan(0.15);
  expect(memory).toBeLessThan(0.5);
});

test('a clear day is smooth and a middling one ragged', () => {
  expect(hourlyClearness(0.75, 0.8).spread).toBeLessThan(0.02);
  expect(hourlyClearness(0.4, 0.8).spread).toBeGreaterThan(0.1);
});
