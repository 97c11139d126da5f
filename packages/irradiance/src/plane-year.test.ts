import { radiansPerDegree as rad } from '@wintergap/ground';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearSkyWm2 } from './clear-sky.js';
import { partHour } from './hour-of-light.js';
import { cosIncidence } from './incidence.js';
import { perezSkyWm2 } from './perez-sky.js';
import type { Irradiance, Pointing } from './plane-input.js';
import { planeYear } from './plane-year.js';
import { groundReflectedWm2, hayDaviesSkyWm2, isotropicSkyWm2, type SkyModel } from './sky-models.js';
import { compileSkyline } from './skyline.js';
import { splitGlobal } from './split-global.js';
import { sunYear } from './sun-year.js';

const models: SkyModel[] = ['perez', 'hay-davies', 'isotropic'];
const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
const albedo = new Float64Array(8760).fill(0.3);

/** A year of clear and dull days by turns. */
const ghiWm2 = sun.meanCosZenith.map(
  (cos, h) => clearSkyWm2(cos) * (0.1 + 0.9 * ((Math.floor(h / 24) * 37) % 11) * 0.1),
);
const irradiance: Irradiance = { ghiWm2, ...splitGlobal(ghiWm2, sun) };

const still = (tiltDeg: number, azimuthDeg: number): Pointing => ({
  tiltDeg: new Float64Array(35040).fill(tiltDeg),
  azimuthDeg: new Float64Array(35040).fill(azimuthDeg),
});
const towardSun: Pointing = { tiltDeg: sun.zenithDeg.map((z) => Math.min(90, z)), azimuthDeg: sun.azimuthDeg };
const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0);

const woods = compileSkyline(
  [
    { fromDeg: 70, toDeg: 125, topM: 16, distanceM: 40 },
    { fromDeg: 215, toDeg: 260, topM: 14, distanceM: 45, clear: { leafOn: 0.1, leafOff: 0.5 } },
  ],
  undefined,
  4,
);

test.each(models)('the chain closes in every hour, beam to cells, fixed and moving: %s', (skyModel) => {
  for (const where of [still(0, 180), still(55, 200), still(90, 0), towardSun]) {
    const year = planeYear(sun, irradiance, where, { skyModel, albedo, skyline: woods });
    for (let h = 0; h < 8760; h++) {
      const plane = year.planeWm2[h]!;
      const open = Math.abs(year.beamWm2[h]! + year.skyWm2[h]! + year.groundWm2[h]! - plane);
      const left = plane - year.skylineLossWm2[h]! - year.glassLossWm2[h]!;
      if (!(open < 1e-9 && Math.abs(left - year.effectiveWm2[h]!) < 1e-9)) throw new Error(`hour ${h} does not close`);
      for (const values of Object.values(year)) if (!(values[h]! > -1e-9)) throw new Error(`hour ${h}: ${values[h]}`);
    }
  }
});

test.each(models)('a level plane gets the global irradiance back in every hour: %s', (skyModel) => {
  const { planeWm2 } = planeYear(sun, irradiance, still(0, 0), { skyModel, albedo });
  for (let h = 0; h < 8760; h++) {
    if (Math.abs(planeWm2[h]! - ghiWm2[h]!) > 1e-9) throw new Error(`hour ${h}: ${planeWm2[h]} of ${ghiWm2[h]}`);
  }
});

test('each hour of the sky is that of the published formula at the mean sun of the hour', () => {
  const where = still(40, 170);
  const parts = new Float64Array(2);
  for (const skyModel of models) {
    const year = planeYear(sun, irradiance, where, { skyModel, albedo });
    for (let h = 9; h < 8760; h += 24 * 7) {
      if (sun.upShare[h] !== 1 || sun.meanCosZenith[h]! < 0.15 || ghiWm2[h] === 0) continue;
      const outside = sun.extraterrestrialNormalWm2[h]!;
      const cosZ = sun.meanCosZenith[h]!;
      partHour(ghiWm2[h]!, irradiance.dniWm2[h]!, irradiance.dhiWm2[h]!, 1, cosZ, outside, parts);
      const [beam, diffuse] = [parts[0]!, parts[1]!];
      let cos = 0;
      for (let i = h * 4; i < h * 4 + 4; i++) {
        cos += Math.max(0, cosIncidence(sun.zenithDeg[i]!, sun.azimuthDeg[i]!, 40, 170)) / 4;
      }
      const zenith = Math.acos(cosZ) / rad;
      const sky =
        skyModel === 'perez'
          ? perezSkyWm2(diffuse, beam, outside, zenith, cos, 40)
          : skyModel === 'hay-davies'
            ? hayDaviesSkyWm2(diffuse, beam, outside, zenith, cos, 40)
            : isotropicSkyWm2(diffuse, 40);
      expect(Math.abs(year.skyWm2[h]! - sky)).toBeLessThan(1e-6);
      expect(Math.abs(year.beamWm2[h]! - beam * cos)).toBeLessThan(1e-6);
      expect(Math.abs(year.groundWm2[h]! - groundReflectedWm2(ghiWm2[h]!, 0.3, 40))).toBeLessThan(1e-9);
    }
  }
});

/** The sun of a clear hour, up for all of it or for its last half, and that hour's light. */
function hourOfSun(up: 0.5 | 1, ghi: number, dni: number, dhi: number) {
  const h = 170 * 24 + 6;
  const from = (4 * h + 4 * (1 - up)) | 0;
  const held: typeof sun = {
    ...sun,
    zenithDeg: sun.zenithDeg
      .slice()
      .fill(180, 4 * h, from)
      .fill(84, from, 4 * h + 4),
    azimuthDeg: sun.azimuthDeg.slice().fill(75, 4 * h, 4 * h + 4),
    cosZenith: sun.cosZenith
      .slice()
      .fill(0, 4 * h, from)
      .fill(Math.cos(84 * rad), from, 4 * h + 4),
    upShare: sun.upShare.with(h, up),
    meanCosZenith: sun.meanCosZenith.with(h, up * Math.cos(84 * rad)),
  };
  const zeros = new Float64Array(8760);
  const light = { ghiWm2: zeros.with(h, up * ghi), dniWm2: zeros.with(h, up * dni), dhiWm2: zeros.with(h, up * dhi) };
  return (skyModel: SkyModel) => planeYear(held, light, still(70, 80), { skyModel, albedo }).planeWm2[h]!;
}

// Perez's brightness is of diffuse light, beam and air mass at one time: it does not fall because the hour began in the dark.
test.each(models)('half an hour of sun brings half of what an hour of the same sun brings: %s', (skyModel) => {
  const cos = Math.cos(84 * rad);
  for (const [dni, dhi] of [
    [0, 60],
    [60, 40],
    [300, 45],
  ] as const) {
    const [half, whole] = [0.5, 1].map((up) => hourOfSun(up as 0.5 | 1, dhi + dni * cos, dni, dhi)(skyModel));
    expect(half).toBeCloseTo(whole! / 2, 9);
  }
});

// Above the air a level plane gets 1317 cos 84 = 138 W/m2 on that day.
test('light beyond what the sun can send has no more of it around the sun', () => {
  const perWm2 = (dhi: number) => hourOfSun(1, dhi, 0, dhi)('perez') / dhi;
  expect(perWm2(1000)).toBeCloseTo(perWm2(140), 9);
  expect(perWm2(100)).toBeLessThan(perWm2(140));
});

test('a skyline of no height changes nothing, to the last bit', () => {
  const flat = compileSkyline(
    [{ fromDeg: 0, toDeg: 360, topM: 4, distanceM: 30 }],
    [{ azimuthDeg: 0, elevationDeg: 0 }],
    4,
  );
  for (const where of [still(60, 180), towardSun]) {
    const open = planeYear(sun, irradiance, where, { skyModel: 'perez', albedo });
    expect(planeYear(sun, irradiance, where, { skyModel: 'perez', albedo, skyline: flat })).toEqual(open);
  }
});

test('behind a wall all round there is no beam, and of the sky no more than is in view', () => {
  const well = compileSkyline([{ fromDeg: 0, toDeg: 360, topM: 1000, distanceM: 10 }], undefined, 0);
  const year = planeYear(sun, irradiance, still(0, 180), { skyModel: 'isotropic', albedo, skyline: well });
  const open = Math.cos(Math.atan(100)) ** 2;
  for (let h = 0; h < 8760; h++) {
    const kept = year.planeWm2[h]! - year.skylineLossWm2[h]!;
    if (Math.abs(kept - open * year.skyWm2[h]!) > 1e-6) throw new Error(`hour ${h}: ${kept} kept`);
  }
});

test('higher obstacles never let more light through', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 180 }),
      fc.integer({ min: 1, max: 179 }),
      fc.integer({ min: 1, max: 30 }),
      fc.constantFrom(...models),
      (fromDeg, width, topM, skyModel) => {
        const effective = (top: number) => {
          const obstacle = { fromDeg, toDeg: fromDeg + width, topM: top, distanceM: 25 };
          const skyline = compileSkyline([obstacle], undefined, 0);
          return planeYear(sun, irradiance, still(50, 180), { skyModel, albedo, skyline }).effectiveWm2;
        };
        const [low, high] = [effective(topM), effective(topM * 1.5)];
        for (let h = 0; h < 8760; h++) if (high[h]! > low[h]! + 1e-9) throw new Error(`hour ${h}`);
      },
    ),
    { numRuns: 8 },
  );
});

test('trees that shed let more winter light through and the same in summer', () => {
  const shadedBy = (leafOff: number) =>
    planeYear(sun, irradiance, still(60, 180), {
      skyModel: 'perez',
      albedo,
      skyline: compileSkyline(
        [{ fromDeg: 150, toDeg: 260, topM: 20, distanceM: 30, clear: { leafOn: 0.1, leafOff } }],
        undefined,
        0,
      ),
    }).effectiveWm2;
  const [spruces, maples] = [shadedBy(0.1), shadedBy(0.6)];
  expect(sum(maples.subarray(0, 744))).toBeGreaterThan(sum(spruces.subarray(0, 744)) * 1.2);
  expect(sum(maples.subarray(200 * 24, 230 * 24))).toBe(sum(spruces.subarray(200 * 24, 230 * 24)));
});

test('once the leaves are down, sky and sun come through as if there never had been any', () => {
  const trees = (leafOn: number) =>
    compileSkyline(
      [{ fromDeg: 0, toDeg: 360, topM: 20, distanceM: 30, clear: { leafOn, leafOff: 0.6 } }],
      undefined,
      0,
    );
  const behind = (leafOn: number) =>
    planeYear(sun, irradiance, still(60, 180), { skyModel: 'isotropic', albedo, skyline: trees(leafOn) }).effectiveWm2;
  const [leafy, bare] = [behind(0), behind(0.6)];
  expect(leafy.subarray(0, 134 * 24)).toEqual(bare.subarray(0, 134 * 24));
  expect(leafy.subarray(273 * 24)).toEqual(bare.subarray(273 * 24));
  expect(sum(leafy.subarray(134 * 24, 273 * 24))).toBeLessThan(0.8 * sum(bare.subarray(134 * 24, 273 * 24)));
});

test('snow on the ground adds light to a steep plane and none to a level one', () => {
  const white = new Float64Array(8760).fill(0.7);
  const gain = (tiltDeg: number) => {
    const on = (ground: Float64Array) =>
      sum(planeYear(sun, irradiance, still(tiltDeg, 180), { skyModel: 'perez', albedo: ground }).planeWm2);
    return on(white) - on(albedo);
  };
  expect(gain(0)).toBe(0);
  expect(gain(70)).toBeGreaterThan(gain(35));
  expect(gain(90) / sum(ghiWm2)).toBeCloseTo(0.4 / 2, 9);
});

test('glass takes most at grazing light and never gives any', () => {
  const share = (tiltDeg: number, azimuthDeg: number) => {
    const year = planeYear(sun, irradiance, still(tiltDeg, azimuthDeg), { skyModel: 'perez', albedo });
    return sum(year.glassLossWm2) / sum(year.planeWm2);
  };
  expect(share(45, 180)).toBeGreaterThan(0.02);
  expect(share(45, 180)).toBeLessThan(0.04);
  expect(share(90, 180)).toBeGreaterThan(share(45, 180));
  expect(share(0, 180)).toBeGreaterThan(share(45, 180));
});

test('any irradiance that passes the check gives finite light, never more losses than light', () => {
  const value = fc.oneof(fc.constant(0), fc.constant(1e-9), fc.integer({ min: 0, max: 1400 }));
  fc.assert(
    fc.property(
      value,
      value,
      value,
      fc.integer({ min: 0, max: 90 }),
      fc.constantFrom(...models),
      (g, b, d, tilt, skyModel) => {
        const year = planeYear(
          sun,
          {
            ghiWm2: new Float64Array(8760).fill(g),
            dniWm2: new Float64Array(8760).fill(b),
            dhiWm2: new Float64Array(8760).fill(d),
          },
          still(tilt, 150),
          { skyModel, albedo, skyline: woods },
        );
        for (let h = 0; h < 8760; h++) {
          const left = year.planeWm2[h]! - year.skylineLossWm2[h]! - year.glassLossWm2[h]!;
          if (!(left > -1e-9 && left < 1e6)) throw new Error(`hour ${h}: ${left}`);
        }
      },
    ),
    { numRuns: 30 },
  );
});

test('the beam of a sunrise hour is read as the source meant it, within what it can mean', () => {
  const out = new Float64Array(2);
  // Half an hour of 100 W/m2 at a mean cosine of 0.1: 50 when averaged over the hour, 100 over its sunlit part.
  partHour(25, 50, 20, 0.5, 0.05, 1361, out);
  expect(Array.from(out)).toEqual([100, 20]);
  partHour(25, 100, 20, 0.5, 0.05, 1361, out);
  expect(Array.from(out)).toEqual([100, 20]);
  // A difference that would need 1000 W/m2 from a sun so low is not believed.
  partHour(70, 50, 20, 0.5, 0.05, 1361, out);
  expect(Array.from(out)).toEqual([100, 65]);
  partHour(3, 0, 3, 0, 0, 1361, out);
  expect(Array.from(out)).toEqual([0, 3]);
  partHour(10, 800, 0, 1, 0.5, 1361, out);
  expect(Array.from(out)).toEqual([20, 0]);
});

test('arrays of wrong length or content are refused with the place of the fault', () => {
  const settings = { skyModel: 'perez', albedo } as const;
  const where = still(40, 180);
  expect(() => planeYear(sun, { ...irradiance, ghiWm2: new Float64Array(24) }, where, settings)).toThrow('8760');
  const holed = { ...irradiance, dniWm2: irradiance.dniWm2.with(5, Number.NaN) };
  expect(() => planeYear(sun, holed, where, settings)).toThrow('dniWm2 at index 5 must be 0 to 100000, got NaN');
  expect(() => planeYear(sun, irradiance, still(91, 180), settings)).toThrow(
    'tiltDeg at index 0 must be 0 to 90, got 91',
  );
  expect(() => planeYear(sun, irradiance, where, { ...settings, skyModel: 'overcast' as SkyModel })).toThrow(
    'got overcast',
  );
});
