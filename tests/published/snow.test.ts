import { monthStartHour } from '@wintergap/ground';
import { planeYear, sunYear } from '@wintergap/irradiance';
import { fullCatch, groundAlbedo, hourlyTiltDeg, pointing, snowCover, snowLossByString } from '@wintergap/mounts';
import { readWeatherFile, resampleYear } from '@wintergap/weather';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// Marion, Schaefer, Caine & Sanchez (2013), Solar Energy 97, 112-121; the constants from memory of the paper.

const constant = (value: number) => new Float64Array(8760).fill(value);
const fallHour = 100;
const depthM = constant(0).map((_, h) => (h >= fallHour && h < 1000 ? 0.3 : 0));

/** Hours after the fall until the plane is bare. */
function hoursToClear(tiltDeg: number, planeWm2: number, airC: number): number {
  const share = snowCover({
    snowDepthM: depthM,
    planeWm2: constant(planeWm2),
    tiltDeg: constant(tiltDeg),
    airC: constant(airC),
    caught: fullCatch,
  });
  return share.subarray(fallHour).indexOf(0);
}

// 0.197 sin(tilt) of the slant height in each hour: 1 / (0.197 sin(tilt)), rounded up to whole hours.
test('a plane clears in as many hours as the rule of Marion and others gives for its tilt', () => {
  const hours: [tiltDeg: number, hours: number][] = [
    [10, 30],
    [20, 15],
    [30, 11],
    [40, 8],
    [60, 6],
  ];
  const marion: Source = { from: 'Marion et al. 2013, 0.197 sin(tilt) an hour', sure: 'from memory' };
  for (const [tiltDeg, expected] of hours) {
    holds(marion, `hours until a plane at ${tiltDeg} deg is bare`, hoursToClear(tiltDeg, 300, 0), expected, {
      within: 0,
    });
  }
});

// Sliding begins where air is warmer than plane irradiance / (-80 W/m2/K).
test('snow begins to slide above -5 degC at 400 W/m2 and above -10 degC at 800 W/m2', () => {
  const slides = (planeWm2: number, airC: number) => hoursToClear(40, planeWm2, airC) < 20;
  expect([slides(400, -5), slides(400, -4.9)]).toEqual([false, true]);
  expect([slides(800, -10), slides(800, -9.9)]).toEqual([false, true]);
  expect([slides(0, 0), slides(0, 0.1)]).toEqual([false, true]);
});

// Loss by strings: the covered share, rounded up to whole strings.
test('a string with one module under snow counts as lost', () => {
  const loss = snowLossByString(Float64Array.of(0, 0.01, 0.25, 0.26, 0.5, 0.51, 1), 4);
  expect(Array.from(loss)).toEqual([0, 0.25, 0.25, 0.5, 0.5, 0.75, 1]);
});

const place = { latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 };
const sun = sunYear(place);
const demo = readWeatherFile(new URL('../../data-demo/kettle-pond.csv', import.meta.url).pathname, { place });

/** Share of the light on a fixed plane to the south that snow takes in each of some months (0 to 11), and in all. */
function snowLosses(weather: typeof demo, tiltDeg: number, months: readonly number[]) {
  const where = pointing({ kind: 'fixed', tiltDeg, azimuthDeg: 180 }, sun);
  const albedo = groundAlbedo(weather.snowDepthM, 0.2, 0.65, null);
  const { planeWm2 } = planeYear(sun, weather, where, { skyModel: 'perez', albedo });
  const snowDepthM = weather.snowDepthM!;
  const covered = snowCover({ snowDepthM, planeWm2, tiltDeg: hourlyTiltDeg(where), airC: weather.airC });
  let [lostInAll, litInAll] = [0, 0];
  const byMonth = months.map((month) => {
    let [lost, lit] = [0, 0];
    for (let h = monthStartHour[month]!; h < monthStartHour[month + 1]!; h++) {
      lost += covered[h]! * planeWm2[h]!;
      lit += planeWm2[h]!;
    }
    lostInAll += lost;
    litInAll += lit;
    return lost / lit;
  });
  return { byMonth, inAll: lostInAll / litInAll };
}

// Townsend & Powers (2011), 37th IEEE PVSC, 3231-3236: the loss of a month goes as cos2(tilt), other things being equal
// (from memory of the paper). That is a fit to two winters of one place; ours follow the weather hour by hour. So the
// mean of some winters is held to 0.05 of the loss at 30 degrees, a single winter to 0.1, and of a month with its few
// falls only the order is asked.
test('the snow losses of a winter fall with tilt as cos2(tilt), and those of each month fall', () => {
  const months = [0, 1, 2, 3, 10, 11];
  const tilts = [30, 45, 60, 75];
  const winters = [demo, ...[1, 2, 3].map((yearIndex) => resampleYear(demo, { seed: 1, yearIndex }))];
  const found = winters.map((weather) => tilts.map((tiltDeg) => snowLosses(weather, tiltDeg, months)));
  const cos2 = (tiltDeg: number) => Math.cos((tiltDeg * Math.PI) / 180) ** 2;
  tilts.forEach((tiltDeg, i) => {
    const expected = cos2(tiltDeg) / cos2(30);
    const shares = found.map((winter) => winter[i]!.inAll / winter[0]!.inAll);
    for (const share of shares) expect(Math.abs(share - expected), `${tiltDeg} degrees`).toBeLessThan(0.1);
    const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
    const townsend: Source = { from: 'Townsend and Powers 2011, cos2(tilt)', sure: 'from memory' };
    if (i > 0)
      holds(townsend, `snow loss of four winters at ${tiltDeg} over that at 30 deg`, mean, expected, { within: 0.05 });
    if (i === 0) return;
    for (const winter of found) {
      winter[i]!.byMonth.forEach((loss, m) => {
        const flatter = winter[i - 1]!.byMonth[m]!;
        if (flatter > 0) expect(loss).toBeLessThan(flatter);
      });
    }
  });
  // The demo's winters take much: the comparison is not one of noughts.
  expect(found[0]!.map(({ inAll }) => inAll)[0]).toBeGreaterThan(0.1);
});
