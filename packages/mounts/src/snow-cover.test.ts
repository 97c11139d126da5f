import fc from 'fast-check';
import { expect, test } from 'vitest';
import { groundAlbedo } from './ground-albedo.js';
import { fullCatch, type SnowCatch, usualCatch } from './snow-catch.js';
import { type SnowCoverInput, snowCover, snowLossByString } from './snow-cover.js';
import { snowDepthFromDays } from './snow-days.js';
import { isDailyReading, snowFalls } from './snow-falls.js';

const constant = (value: number) => new Float64Array(8760).fill(value);

/** Bare ground, then 10 cm of snow from hour 1000 to 3000. */
const oneFall = constant(0).map((_, h) => (h >= 1000 && h < 3000 ? 0.1 : 0));
const winter = (over: Partial<SnowCoverInput> = {}): Float64Array =>
  snowCover({ snowDepthM: oneFall, planeWm2: constant(0), tiltDeg: constant(35), airC: constant(-5), ...over });

test('a plane is bare until it snows, covered whole then, and stays so in the cold', () => {
  const share = winter();
  expect([share[999], share[1000], share[2999], share[3000]]).toEqual([0, 1, 1, 0]);
});

test('steeper planes, warmer air and more sun never keep snow longer', () => {
  const total = (values: Float64Array) => values.reduce((a, b) => a + b, 0);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 80 }), fc.integer({ min: -15, max: 4 }), fc.nat(900), (tilt, air, sun) => {
      const tiltDeg = constant(tilt);
      const planeWm2 = constant(0).map((_, h) => (h % 24 > 8 && h % 24 < 16 ? sun : 0));
      const base = total(winter({ tiltDeg, planeWm2, airC: constant(air) }));
      expect(total(winter({ tiltDeg: constant(tilt + 10), planeWm2, airC: constant(air) }))).toBeLessThanOrEqual(base);
      expect(total(winter({ tiltDeg, planeWm2, airC: constant(air + 2) }))).toBeLessThanOrEqual(base);
      const brighter = planeWm2.map((value) => value * 1.3);
      expect(total(winter({ tiltDeg, planeWm2: brighter, airC: constant(air) }))).toBeLessThanOrEqual(base);
    }),
    { numRuns: 10 },
  );
});

test('a flat plane keeps its snow until the ground is bare', () => {
  const share = winter({ tiltDeg: constant(0), airC: constant(3) });
  expect([share[2999], share[3000]]).toEqual([1, 0]);
});

/** A plane in light from 8 h to 16 h, in the cold. */
const shortDays = constant(0).map((_, h) => (h % 24 >= 8 && h % 24 < 16 ? 100 : 0));

/** Hours by the clock that the snow of a fall lies until somebody has swept; the fall ends at an hour of day 20. */
function hoursUntilSwept(fallEndsAt: number, withinH: number, planeWm2 = shortDays): number {
  const end = 20 * 24 + fallEndsAt;
  const snowDepthM = constant(0).map((_, h) => (h >= end - 1 && h < 3000 ? 0.1 : 0));
  const share = winter({ snowDepthM, planeWm2, airC: constant(-30), clearing: { withinH } });
  expect(share[end - 1]).toBe(1);
  return share.subarray(end).indexOf(0);
}

test('who sweeps within so many hours does so by the clock, and by daylight', () => {
  // Snow until ten in the morning: three hours later, a day later, two days later.
  expect([0, 3, 24, 48].map((withinH) => hoursUntilSwept(10, withinH))).toEqual([0, 3, 24, 48]);
  // Until two in the afternoon: the last light begins at 15 h, before dark, and the sixth hour would be too late.
  expect([1, 6, 24].map((withinH) => hoursUntilSwept(14, withinH))).toEqual([1, 1, 24]);
  // Until six in the evening: dark all the while, so at first light; within a day by 15 h, while it is still light.
  expect([3, 13, 24].map((withinH) => hoursUntilSwept(18, withinH))).toEqual([14, 14, 21]);
  // Until five in the morning: at first light, or three hours later still.
  expect([1, 3, 6].map((withinH) => hoursUntilSwept(5, withinH))).toEqual([3, 3, 6]);
  // Nobody sweeps where it never gets light, nor at five on a summer morning.
  expect(hoursUntilSwept(10, 3, constant(0))).toBe(3000 - 20 * 24 - 10);
  expect(hoursUntilSwept(4, 1, constant(20))).toBe(3);
});

test('who sweeps later never has less snow, and sweeps again after the next fall', () => {
  const lain = [0, 1, 2, 3, 6, 12, 18, 24, 30, 48, 72].map((withinH) => hoursUntilSwept(13, withinH));
  expect(lain).toEqual(lain.toSorted((one, other) => one - other));
  const again = oneFall.map((depth, h) => (h >= 1500 && h < 3000 ? 0.2 : depth));
  const share = winter({ snowDepthM: again, planeWm2: shortDays, airC: constant(-30), clearing: { withinH: 2 } });
  // Hour 1000 begins at 16 h and hour 1500 at 12 h.
  expect([share[1000], share[1015], share[1016], share[1499]]).toEqual([1, 1, 0, 0]);
  expect([share[1500], share[1502], share[1503], share[1600]]).toEqual([1, 1, 0, 0]);
});

test('snow on the ground at the end of December lies on the plane at New Year', () => {
  const snowDepthM = constant(0.2);
  snowDepthM.fill(0, 2000, 8000);
  expect(winter({ snowDepthM })[0]).toBe(1);
});

test('a fall counts from more than a centimetre in an hour or an inch in a day', () => {
  const rising = (perHour: number) => constant(0).map((_, h) => Math.min(Math.max(0, h - 500), 12) * perHour);
  const first = (depthM: Float64Array) => snowFalls(depthM).indexOf(1);
  expect(first(rising(0.011))).toBe(501);
  expect(first(rising(0.009))).toBe(503);
  // An inch is reached by the ninth hour of 3 mm each; twelve hours of 2 mm do not reach it.
  expect(first(rising(0.003))).toBe(509);
  expect(first(rising(0.002))).toBe(-1);
});

test('slow snow covers a plane once for each inch, not hour after hour', () => {
  const depthM = constant(0).map((_, h) => Math.min(Math.max(0, h - 500), 30) * 0.004);
  expect(snowFalls(depthM).reduce((a, b) => a + b, 0)).toBe(4);
});

test('of daily readings an inch is asked, as the centimetre is of hourly ones', () => {
  const stepwise = (step: number) =>
    constant(0).map((_, h) => Math.min(4, Math.floor(Math.max(0, h - 480) / 24)) * step);
  expect(isDailyReading(stepwise(0.02))).toBe(true);
  expect(isDailyReading(constant(0))).toBe(false);
  expect(snowFalls(stepwise(0.02)).includes(1)).toBe(false);
  expect(snowFalls(stepwise(0.0254)).reduce((a, b) => a + b, 0)).toBe(4);
});

test('snow depths of the wrong length are refused, and so is a catch that grows with tilt', () => {
  expect(() => winter({ airC: new Float64Array(24) })).toThrow('airC must hold 8760 numbers, got 24');
  expect(() => winter({ tiltDeg: constant(40).with(9, Number.NaN) })).toThrow(
    'tiltDeg at index 9 must be 0 to 90, got NaN',
  );
  expect(() => winter({ clearing: { withinH: -1 } })).toThrow('withinH of the clearing must be 0 or more, got -1');
  expect(() => winter({ caught: { wholeUpToDeg: 50, bareFromDeg: 45 } })).toThrow(
    'bareFromDeg must be 50 to 90, got 45',
  );
  expect(() => snowLossByString(constant(0), 0)).toThrow('rows must be a whole number, 1 or more, got 0');
});

test('ground under snow is as bright as snow, under a thin layer partly so, and a file that knows decides', () => {
  const depthM = constant(0);
  depthM[1] = 0.3;
  depthM[2] = 0.025;
  expect(Array.from(groundAlbedo(depthM, 0.2, 0.6, null).subarray(0, 3))).toEqual([0.2, 0.6, 0.4]);
  const file = constant(0);
  file[1] = 0.75;
  expect(Array.from(groundAlbedo(depthM, 0.2, 0.6, file).subarray(0, 3))).toEqual([0.2, 0.75, 0.4]);
  expect(groundAlbedo(null, 0.2, 0.6, null)).toEqual(constant(0.2));
  // One value all year says nothing of winter: under snow, snow's own; one that rises with snow was measured.
  expect(Array.from(groundAlbedo(depthM, 0.2, 0.6, constant(0.25)).subarray(0, 3))).toEqual([0.25, 0.6, 0.425]);
  const measured = constant(0.22);
  measured[1] = 0.5;
  expect(groundAlbedo(depthM, 0.2, 0.6, measured)[1]).toBe(0.5);
  expect(() => groundAlbedo(null, 2, 0.6, null)).toThrow('albedo must be 0 to 1, got 2');
});

const airC = constant(0).map((_, h) => 7 - 17 * Math.cos((h / 8760) * 2 * Math.PI) + 4 * Math.sin(h / 37));
const snowyDays = [9, 8, 6, 2, 0, 0, 0, 0, 0, 1, 5, 8];

test('a made winter has the asked number of falls that cover a plane, and bare summers', () => {
  const depthM = snowDepthFromDays(snowyDays, airC, 1);
  const falls = snowFalls(depthM);
  const days = new Set<number>();
  falls.forEach((fall, h) => {
    if (fall === 1) days.add(Math.floor(h / 24));
  });
  expect(Math.abs(days.size - 39)).toBeLessThanOrEqual(2);
  expect(depthM.subarray(170 * 24, 250 * 24).every((depth) => depth === 0)).toBe(true);
  expect(Math.max(...depthM)).toBeLessThan(1.5);
});

test('the same seed makes the same winter, another seed another', () => {
  const winterOf = (seed: number) => snowDepthFromDays(snowyDays, airC, seed);
  expect(winterOf(7)).toEqual(winterOf(7));
  expect(winterOf(7)).not.toEqual(winterOf(8));
  expect(() => snowDepthFromDays([1], airC, 1)).toThrow('snowyDays must have 12 months, got 1');
  expect(() => snowDepthFromDays(snowyDays.with(3, 40), airC, 1)).toThrow('snowyDays must be 0 to 31, got 40');
});

// Common practice, no source: a steep plane sheds dry snow as it falls, one of 85 degrees and more catches none.
test('a fall covers steep planes in part, in proportion between the tilts of a site, however cold it is', () => {
  const cold = { airC: constant(-30), planeWm2: constant(50) };
  const covered = (tilts: number[], caught: SnowCatch) =>
    tilts.map((tilt) => Math.max(...winter({ ...cold, tiltDeg: constant(tilt), caught })));
  expect(covered([30, 35, 45, 60, 75, 85, 90], usualCatch)).toEqual([1, 1, 0.8, 0.5, 0.2, 0, 0]);
  expect(covered([30, 60, 90], fullCatch)).toEqual([1, 1, 1]);
  expect(covered([45, 60, 75], { wholeUpToDeg: 50, bareFromDeg: 70 })).toEqual([1, 0.5, 0]);
  expect(Math.max(...winter({ ...cold, tiltDeg: constant(60) }))).toBe(0.5);
});

// Marion et al. (2013): 0.197 sin(90) of the slant height in each hour that lets it slide: bare in the sixth hour.
test('an upright plane that was covered whole clears by sliding alone', () => {
  const share = winter({ tiltDeg: constant(90), airC: constant(1), caught: fullCatch });
  expect(Array.from(share.subarray(1000, 1007), (value) => Math.round(value * 1e3))).toEqual([
    1000, 803, 606, 409, 212, 15, 0,
  ]);
});

const settledPerH = 1 - 0.04 / 24;
const monthly = (days: number) => new Array<number>(12).fill(days);
/** What fell in each hour, from depths in frost: settling alone takes away. */
const fallsOf = (depthM: Float64Array) =>
  depthM.map((depth, h) => (h === 0 ? 0 : Math.max(0, depth - depthM[h - 1]! * settledPerH)));

test('a made fall is 3 cm or more and 5 cm in the mean, in four hours of one day', () => {
  const falls = fallsOf(snowDepthFromDays(monthly(31), constant(-10), 3));
  const byDay = Array.from({ length: 364 }, (_, d) =>
    Array.from(falls.subarray((d + 1) * 24, (d + 2) * 24)).filter((fall) => fall > 1e-6),
  );
  for (const hours of byDay) {
    expect(hours).toHaveLength(4);
    for (const fall of hours) expect(fall).toBeCloseTo(hours[0]!, 9);
  }
  const depths = byDay.map((hours) => 4 * hours[0]!);
  expect(Math.min(...depths)).toBeGreaterThanOrEqual(0.03 - 1e-9);
  // The part above 3 cm is exponential with a mean of 2 cm: 0.1 cm is its standard error of 364 falls, and four of them.
  expect(Math.abs(depths.reduce((sum, depth) => sum + depth) / 364 - 0.05)).toBeLessThan(0.004);
  const deep = depths.filter((depth) => depth > 0.05).length / 364;
  expect(Math.abs(deep - Math.exp(-1))).toBeLessThan(0.1);
});

test('made snow settles by 4 % a day and melts by 2 cm a day for each degree above freezing', () => {
  const airC = constant(-10).fill(3, 60 * 24);
  const depthM = snowDepthFromDays(monthly(0).with(0, 31), airC, 3);
  expect(depthM[50 * 24]! / depthM[40 * 24]!).toBeCloseTo(settledPerH ** 240, 9);
  const melting = 60 * 24 + 5;
  expect(depthM[melting]!).toBeCloseTo(depthM[melting - 1]! * settledPerH - (3 * 0.02) / 24, 9);
  expect(depthM[200 * 24]).toBe(0);
  // What the December leaves lies on at New Year.
  const late = snowDepthFromDays(monthly(0).with(11, 31), constant(-10), 3);
  expect(late[0]).toBeCloseTo(late[8759]! * settledPerH, 9);
});

test('it snows on the coldest days, but of days well below freezing on any', () => {
  const days = (airC: Float64Array) => {
    const found = new Set<number>();
    snowDepthFromDays(monthly(0).with(1, 10), airC, 5).forEach((depth, h, all) => {
      if (h > 0 && depth > all[h - 1]!) found.add(Math.floor(h / 24) - 31);
    });
    return [...found];
  };
  // February: ten days of frost, the rest at 10 degC.
  const frost = constant(10).fill(-20, (31 + 8) * 24, (31 + 18) * 24);
  expect(days(frost)).toEqual([8, 9, 10, 11, 12, 13, 14, 15, 16, 17]);
  // Half of it at -6 degC, half at -30: it is cold enough for snow in both.
  const colder = constant(-6).fill(-30, (31 + 14) * 24, 59 * 24);
  expect(days(colder).some((day) => day < 14)).toBe(true);
  expect(days(colder).some((day) => day >= 14)).toBe(true);
});

test('a made winter without sense is refused', () => {
  expect(() => snowDepthFromDays(monthly(-1), constant(0), 1)).toThrow('0 to 31, got -1');
  expect(() => snowDepthFromDays(monthly(Number.NaN), constant(0), 1)).toThrow('0 to 31, got NaN');
  expect(() => snowDepthFromDays(monthly(1), constant(0), 1.5)).toThrow('seed must be a whole number, got 1.5');
  expect(() => snowDepthFromDays(monthly(1), constant(99), 1)).toThrow('airC at index 0');
});

test('a file is believed where its albedo rises by a tenth with snow of 5 cm, and bare or white all year', () => {
  const half = constant(0).fill(0.05, 0, 4380);
  const file = (overSnow: number, bare: number) => constant(bare).fill(overSnow, 0, 4380);
  // 0.25 over bare ground; with snow of 0.6: 0.36 is measured, 0.34 is not.
  expect(groundAlbedo(half, 0.2, 0.6, file(0.36, 0.25))[0]).toBe(0.36);
  expect(groundAlbedo(half, 0.2, 0.6, file(0.34, 0.25))[0]).toBe(0.6);
  expect(groundAlbedo(half, 0.2, 0.6, file(0.34, 0.25))[5000]).toBe(0.25);
  // Thin snow is neither: it says nothing of the file.
  const thin = half.map((depth, h) => (h < 4000 ? depth : h < 4380 ? 0.04 : 0));
  const dirty = file(0.36, 0.25).fill(0.9, 4000, 4380);
  expect(groundAlbedo(thin, 0.2, 0.6, dirty)[0]).toBe(0.36);
  // Nothing to compare with: the file stands.
  expect(groundAlbedo(constant(0.3), 0.2, 0.6, constant(0.4))[0]).toBe(0.4);
  expect(groundAlbedo(constant(0), 0.2, 0.6, constant(0.4))[0]).toBe(0.4);
  // 0 and numbers above 1 state nothing; 1 does.
  expect(
    Array.from(
      groundAlbedo(
        null,
        0.2,
        0.6,
        Float64Array.from({ length: 8760 }, (_, h) => [0, 1.1, 1][h % 3]!),
      ).subarray(0, 3),
    ),
  ).toEqual([0.2, 0.2, 1]);
});

test('hours in which a file states nothing do not speak against it', () => {
  const half = constant(0).fill(0.05, 0, 4380);
  // 0.4 over snow and 0.2 over bare ground, stated in every second hour: 0 and 9.99 stand for missing.
  const stated = (missing: number, snow: number, from: number, to: number) =>
    constant(0.2)
      .fill(snow, 0, 4380)
      .map((albedo, h) => (h >= from && h < to && h % 2 === 1 ? missing : albedo));
  expect(groundAlbedo(half, 0.2, 0.6, stated(0, 0.4, 0, 4380))[0]).toBe(0.4);
  expect(groundAlbedo(half, 0.2, 0.6, stated(9.99, 0.4, 4380, 8760))[0]).toBe(0.4);
  // The whole of the light is an albedo too: half of the snow at 1 and half at 0.25 are 0.62.
  expect(groundAlbedo(half, 0.2, 0.6, stated(1, 0.25, 0, 4380))[0]).toBe(0.25);
});

test('where snow is never deep a file has nothing to rise with, and stands', () => {
  const thin = constant(0).fill(0.04, 0, 4380);
  expect(groundAlbedo(thin, 0.2, 0.6, constant(0.3))[0]).toBe(0.3);
  expect(groundAlbedo(thin, 0.2, 0.6, null)[0]).toBeCloseTo(0.2 + 0.8 * 0.4, 12);
});

test('made falls begin at any hour that leaves four of the day', () => {
  const falls = fallsOf(snowDepthFromDays(monthly(31), constant(-10), 3));
  const starts = new Set<number>();
  for (let h = 24; h < 8760; h++) if (falls[h]! > 1e-6 && falls[h - 1]! <= 1e-6) starts.add(h % 24);
  // Some 360 falls on 21 hours: each of them is all but sure to be met.
  expect([...starts].sort((a, b) => a - b)).toEqual(Array.from({ length: 21 }, (_, hour) => hour));
});

/** Days of a month on which snow fell in a made winter: those on which its depth rises. */
function daysOfSnow(airC: Float64Array, month: number, wanted: number, firstHour: number, seed: number): Set<number> {
  const depthM = snowDepthFromDays(monthly(0).with(month, wanted), airC, seed);
  const found = new Set<number>();
  for (let h = firstHour; h < 8760; h++) if (depthM[h]! > depthM[h - 1]!) found.add(Math.floor((h - firstHour) / 24));
  return found;
}

test('days a few degrees warmer than others get snow too, as chance has it', () => {
  const airC = constant(2).fill(5, (31 + 14) * 24, 59 * 24);
  const days = [...daysOfSnow(airC, 1, 14, 31 * 24, 5)];
  expect(days.some((day) => day >= 14)).toBe(true);
  expect(days.filter((day) => day < 14).length).toBeGreaterThan(days.length / 2);
});

test('the last day of the year is one of December', () => {
  const airC = constant(20).fill(-20, 364 * 24);
  expect([...daysOfSnow(airC, 11, 1, 334 * 24, 5)]).toEqual([30]);
});

test('seeds of more than 32 bits are told apart', () => {
  const winter = (seed: number) => snowDepthFromDays(monthly(5), constant(-10), seed);
  expect(winter(3 + 2 ** 32)).not.toEqual(winter(3));
  expect(winter(3 + 2 ** 33)).not.toEqual(winter(3 + 2 ** 32));
});
