import { cosIncidence, sunYear } from '@wintergap/irradiance';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestTilt, bestTwoTilts } from './best-tilt.js';
import { planeEnergyKWhM2 } from './plane-energy.js';

test('the best tilt of any single-peaked score is found to a degree', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 900 }), (tenths) => {
      const peak = tenths / 10;
      const { tiltDeg, trials } = bestTilt((tilt) => -((tilt - peak) ** 2));
      expect(Math.abs(tiltDeg - peak)).toBeLessThanOrEqual(1);
      expect(trials).toBeLessThanOrEqual(50);
    }),
  );
});

test('a search stays within its limits and ends on steps, plateaus and nonsense', () => {
  expect(bestTilt((tilt) => tilt, { minTiltDeg: 20, maxTiltDeg: 60 }).tiltDeg).toBe(60);
  expect(bestTilt((tilt) => -tilt, { minTiltDeg: 20, maxTiltDeg: 60 }).tiltDeg).toBe(20);
  expect(bestTilt(() => 1, { minTiltDeg: 30, maxTiltDeg: 30 })).toMatchObject({ tiltDeg: 30, score: 1 });
  // Generator hours come in whole numbers.
  const hours = bestTilt((tilt) => -Math.ceil(Math.abs(tilt - 57) / 8));
  expect(Math.abs(hours.tiltDeg - 57)).toBeLessThanOrEqual(8);
  expect(bestTilt((tilt) => (tilt > 45 ? Number.NaN : tilt)).tiltDeg).toBe(45);
  expect(() => bestTilt(() => 0, { minTiltDeg: 50, maxTiltDeg: 40 })).toThrow('got 50 to 40');
});

test('two tilts and their dates are found for a score with a known best', () => {
  const { tilts, trials } = bestTwoTilts(
    ([winter, summer]) =>
      -((winter.tiltDeg - 63) ** 2) -
      (summer.tiltDeg - 21) ** 2 -
      ((winter.fromDay - 262) / 4) ** 2 -
      ((summer.fromDay - 75) / 4) ** 2,
    47,
  );
  expect(Math.abs(tilts[0].tiltDeg - 63)).toBeLessThanOrEqual(1);
  expect(Math.abs(tilts[1].tiltDeg - 21)).toBeLessThanOrEqual(1);
  expect(Math.abs(tilts[0].fromDay - 262)).toBeLessThanOrEqual(2);
  expect(Math.abs(tilts[1].fromDay - 75)).toBeLessThanOrEqual(2);
  expect(trials).toBeLessThanOrEqual(250);
});

const clear = (latitudeDeg: number) => {
  const sun = sunYear({ latitudeDeg, longitudeDeg: 0, utcOffsetH: 0, clock: 'sundial' });
  const dhiWm2 = new Float64Array(8760);
  const irradiance = {
    ghiWm2: sun.meanCosZenith.map((cos) => 700 * cos),
    dniWm2: sun.upShare.map((up) => 700 * up),
    dhiWm2,
  };
  const settings = { skyModel: 'isotropic', albedo: new Float64Array(8760) } as const;
  return { sun, irradiance, settings };
};

test('for clear skies the best tilt of the year lies some degrees below the latitude', () => {
  const { sun, irradiance, settings } = clear(45);
  const { tiltDeg } = bestTilt((tilt) =>
    planeEnergyKWhM2({ kind: 'fixed', tiltDeg: tilt, azimuthDeg: 180 }, sun, irradiance, settings),
  );
  // Rule of the trade: near the latitude (common practice, no source); long summer evenings behind the plane flatten it.
  expect(tiltDeg).toBeGreaterThanOrEqual(35);
  expect(tiltDeg).toBeLessThanOrEqual(45);
});

// Closed form: while the sun is never behind the plane, the light of all hours adds up like arrows, and the best plane
// stands square to their sum. Glass, which the sum leaves out, moves the best by less than 2 degrees.
test('for the dark months the best tilt is square to the sum of the sunbeams', () => {
  const { sun, irradiance, settings } = clear(45);
  const score = (tiltDeg: number) =>
    planeEnergyKWhM2({ kind: 'fixed', tiltDeg, azimuthDeg: 180 }, sun, irradiance, settings, [11, 12, 1]);
  let [south, up] = [0, 0];
  for (let i = 0; i < 35040; i++) {
    const day = Math.floor(i / 96);
    if (sun.cosZenith[i] === 0 || (day >= 31 && day < 304)) continue;
    up += sun.cosZenith[i]!;
    south -= Math.sqrt(1 - sun.cosZenith[i]! ** 2) * Math.cos((sun.azimuthDeg[i]! * Math.PI) / 180);
  }
  const square = (Math.atan2(south, up) * 180) / Math.PI;
  expect(square).toBeGreaterThan(65);
  expect(Math.abs(bestTilt(score).tiltDeg - square)).toBeLessThan(2.5);
});

// The beam of clear skies alone, at every hour of every fifth day.
test('two tilts bring more than one, in either hemisphere', () => {
  for (const latitudeDeg of [45, -45]) {
    const { sun } = clear(latitudeDeg);
    const azimuthDeg = latitudeDeg < 0 ? 0 : 180;
    const beam = (tiltOn: (day: number) => number) => {
      let sum = 0;
      for (let day = 0; day < 365; day += 5) {
        for (let i = day * 96; i < day * 96 + 96; i += 4) {
          if (sun.cosZenith[i] === 0) continue;
          sum += Math.max(0, cosIncidence(sun.zenithDeg[i]!, sun.azimuthDeg[i]!, tiltOn(day), azimuthDeg));
        }
      }
      return sum;
    };
    const one = bestTilt((tiltDeg) => beam(() => tiltDeg));
    const two = bestTwoTilts((tilts) => {
      const [early, late] = [...tilts].sort((a, b) => a.fromDay - b.fromDay);
      return beam((day) => (day >= early!.fromDay && day < late!.fromDay ? early!.tiltDeg : late!.tiltDeg));
    }, latitudeDeg);
    expect(two.score).toBeGreaterThan(one.score * 1.03);
    expect(two.tilts[0].tiltDeg).toBeGreaterThan(two.tilts[1].tiltDeg + 20);
  }
});

test('a search looks at every tenth degree and both ends, then at steps of 5, 2 and 1 about the best', () => {
  const visited: number[] = [];
  bestTilt((tilt) => {
    visited.push(tilt);
    return 0;
  });
  expect(visited).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 5, 2, 1]);
  visited.length = 0;
  const found = bestTilt((tilt) => {
    visited.push(tilt);
    return tilt === 40 ? 1 : 0;
  });
  expect(visited).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 45, 35, 42, 38, 41, 39]);
  expect(found).toEqual({ tiltDeg: 40, score: 1, trials: 16 });
});

test('however rugged the score, a search counts its trials and ends in time with the best it saw', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      const scores: number[] = [];
      const rugged = (...at: number[]) => {
        const score = at.reduce((sum, x, i) => sum + Math.sin(seed * (i + 1) + x * x) + x / 40, 0);
        scores.push(score);
        return score;
      };
      const one = bestTilt(rugged);
      expect([one.trials, one.score]).toEqual([scores.length, Math.max(...scores)]);
      expect(one.trials).toBeLessThanOrEqual(50);
      scores.length = 0;
      const two = bestTwoTilts(([a, b]) => rugged(a.tiltDeg, b.tiltDeg, a.fromDay, b.fromDay), 47);
      expect([two.trials, two.score]).toEqual([scores.length, Math.max(...scores)]);
      expect(two.trials).toBeLessThanOrEqual(250);
    }),
    { numRuns: 20 },
  );
});

test('the two dates stay within two months of the usual ones, which in the south are the other way round', () => {
  const later = bestTwoTilts(([winter, summer]) => winter.fromDay + summer.fromDay, 47);
  expect(later.tilts.map(({ fromDay }) => fromDay)).toEqual([273 + 60, 90 + 60]);
  const earlier = bestTwoTilts(([winter, summer]) => -winter.fromDay - summer.fromDay, -47);
  expect(earlier.tilts.map(({ fromDay }) => fromDay)).toEqual([90 - 60, 273 - 60]);
  const within = { minTiltDeg: 20, maxTiltDeg: 30 };
  const { tilts } = bestTwoTilts(([winter, summer]) => winter.tiltDeg - summer.tiltDeg, 47, within);
  expect(tilts.map(({ tiltDeg }) => tiltDeg)).toEqual([30, 20]);
  // On the equator the north's seasons are taken.
  expect(bestTwoTilts(() => 0, 0).tilts.map(({ fromDay }) => fromDay)).toEqual([273, 90]);
});

test('the limits of tilts are 0 and 90 degrees', () => {
  expect(() => bestTilt(() => 0, { minTiltDeg: -1, maxTiltDeg: 40 })).toThrow('got -1 to 40');
  expect(() => bestTilt(() => 0, { minTiltDeg: 0, maxTiltDeg: 91 })).toThrow('got 0 to 91');
  expect(() => bestTwoTilts(() => 0, 47, { minTiltDeg: 0, maxTiltDeg: 91 })).toThrow('got 0 to 91');
});

test('the energy of chosen months adds up to that of the year', () => {
  const { sun, irradiance, settings } = clear(45);
  const mount = { kind: 'fixed', tiltDeg: 30, azimuthDeg: 180 } as const;
  const year = planeEnergyKWhM2(mount, sun, irradiance, settings);
  const months = Array.from({ length: 12 }, (_, m) => planeEnergyKWhM2(mount, sun, irradiance, settings, [m + 1]));
  expect(months.reduce((sum, kWh) => sum + kWh)).toBeCloseTo(year, 9);
  expect(Math.min(...months)).toBeGreaterThan(0);
  // June, of 700 W/m2 of beam for some fifteen hours a day, lies between 100 and 300 kWh/m2.
  expect(months[5]).toBeGreaterThan(100);
  expect(months[5]).toBeLessThan(300);
  for (const month of [0, 13, 1.5]) {
    expect(() => planeEnergyKWhM2(mount, sun, irradiance, settings, [month])).toThrow(`got ${month}`);
  }
});

test('two tilts are looked for from 15 degrees steeper and flatter than the best single one, within the limits', () => {
  // Alike but for the single tilt, so that the first pair asked for is where the search begins.
  const firstPair = (best: number) => {
    const pairs: [number, number][] = [];
    bestTwoTilts(([winter, summer]) => {
      if (winter.tiltDeg !== summer.tiltDeg) pairs.push([winter.tiltDeg, summer.tiltDeg]);
      return winter.tiltDeg === summer.tiltDeg ? -Math.abs(winter.tiltDeg - best) : -1000;
    }, 47);
    return pairs[0];
  };
  expect(firstPair(40)).toEqual([55, 25]);
  expect(firstPair(80)).toEqual([90, 65]);
  expect(firstPair(10)).toEqual([25, 0]);
});

test('a score that gets better with every asking is asked no more than 50 times, or 250 for two tilts', () => {
  let asked = 0;
  expect(bestTilt(() => asked++).trials).toBe(50);
  expect(asked).toBe(50);
  asked = 0;
  expect(bestTwoTilts(() => asked++, 47).trials).toBe(250);
  expect(asked).toBe(250);
});
