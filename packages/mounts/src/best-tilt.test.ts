import { sunYear } from '@wintergap/irradiance';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bestTilt, bestTwoTilts } from './best-tilt.js';
import { planeEnergyKWhM2 } from './plane-energy.js';

test('the best tilt of any single-peaked score is found to a degree', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 90, noNaN: true }), (peak) => {
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

test('two tilts bring more than one, in either hemisphere', () => {
  for (const latitudeDeg of [45, -45]) {
    const { sun, irradiance, settings } = clear(latitudeDeg);
    const azimuthDeg = latitudeDeg < 0 ? 0 : 180;
    const one = bestTilt((tiltDeg) =>
      planeEnergyKWhM2({ kind: 'fixed', tiltDeg, azimuthDeg }, sun, irradiance, settings),
    );
    const two = bestTwoTilts(
      (tilts) => planeEnergyKWhM2({ kind: 'seasonal', tilts, azimuthDeg }, sun, irradiance, settings),
      latitudeDeg,
    );
    expect(two.score).toBeGreaterThan(one.score * 1.03);
    expect(two.tilts[0].tiltDeg).toBeGreaterThan(two.tilts[1].tiltDeg + 20);
  }
});
