import { cosIncidence, sunYear } from '@wintergap/irradiance';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { driveLoadW } from './drive-load.js';
import type { Mount } from './mount.js';
import { hourlyTiltDeg, pointing } from './pointing.js';

const sun = sunYear({ latitudeDeg: 46.9, longitudeDeg: -92.2, utcOffsetH: -6 });
const tilts = [
  { fromDay: 90, tiltDeg: 35 },
  { fromDay: 273, tiltDeg: 68 },
];
const pole: Mount = { kind: 'pole', tilts, turnDeg: 220 };
const twoAxis: Mount = { kind: 'two-axis', minTiltDeg: 10, maxTiltDeg: 80 };
const points = 35040;

test('a seasonal mount holds each tilt from its day on, the last one through New Year', () => {
  const { tiltDeg, azimuthDeg } = pointing({ kind: 'seasonal', azimuthDeg: 170, tilts }, sun);
  const on = (day: number) => tiltDeg[day * 96];
  expect([on(0), on(89), on(90), on(272), on(273), on(364)]).toEqual([68, 68, 35, 35, 68, 68]);
  expect(tiltDeg[90 * 96 - 1]).toBe(68);
  expect(new Set(azimuthDeg)).toEqual(new Set([170]));
});

test('a pole faces the azimuth of the sun within its turn and stops at its ends', () => {
  const { tiltDeg, azimuthDeg } = pointing(pole, sun);
  let stopped = 0;
  for (let i = 0; i < points; i++) {
    if (!(azimuthDeg[i]! >= 70 && azimuthDeg[i]! <= 290)) throw new Error(`point ${i} is beyond the stops`);
    if (sun.cosZenith[i] === 0) continue;
    const wanted = Math.min(290, Math.max(70, sun.azimuthDeg[i]!));
    if (wanted !== sun.azimuthDeg[i]) stopped++;
    const tilt = i >= 90 * 96 && i < 273 * 96 ? 35 : 68;
    if (Math.abs(azimuthDeg[i]! - wanted) > 1e-9 || tiltDeg[i] !== tilt) throw new Error(`point ${i} faces elsewhere`);
  }
  expect(stopped).toBeGreaterThan(100);
});

// Somebody turns the pole at the date, not with the sun: the last night of a season is spent at its tilt.
test('the tilt of a pole changes at midnight of its date', () => {
  const { tiltDeg } = pointing(pole, sun);
  expect([tiltDeg[90 * 96 - 1], tiltDeg[90 * 96]]).toEqual([68, 35]);
  expect([tiltDeg[273 * 96 - 1], tiltDeg[273 * 96]]).toEqual([35, 68]);
});

test('a pole turns back after sunset to where it meets the sun in the morning', () => {
  const { azimuthDeg } = pointing(pole, sun);
  for (const day of [10, 100, 200]) {
    let sunrise = (day + 1) * 96;
    while (sun.cosZenith[sunrise] === 0) sunrise++;
    expect(azimuthDeg[day * 96 + 92]).toBe(azimuthDeg[sunrise]);
  }
  // New Year's night waits for the sun of 1 January.
  expect(azimuthDeg[points - 1]).toBe(azimuthDeg[0]);
});

test('two axes face the sun squarely wherever their limits let them', () => {
  const { tiltDeg, azimuthDeg } = pointing(twoAxis, sun);
  let square = 0;
  for (let i = 0; i < points; i++) {
    if (!(tiltDeg[i]! >= 10 && tiltDeg[i]! <= 80)) throw new Error(`point ${i} is beyond the limits`);
    if (sun.cosZenith[i] === 0 || sun.zenithDeg[i]! > 80) continue;
    square++;
    const cos = cosIncidence(sun.zenithDeg[i]!, sun.azimuthDeg[i]!, tiltDeg[i]!, azimuthDeg[i]!);
    if (cos < 1 - 1e-9) throw new Error(`point ${i} is not square to the sun`);
  }
  expect(square).toBeGreaterThan(10_000);
});

test('every mount points somewhere at every moment, at any latitude', () => {
  const azimuth = fc.integer({ min: 0, max: 3600 }).map((tenths) => tenths / 10);
  const tilt = fc.integer({ min: 0, max: 900 }).map((tenths) => tenths / 10);
  const mounts: fc.Arbitrary<Mount> = fc.oneof(
    fc.record({ kind: fc.constant('fixed' as const), tiltDeg: tilt, azimuthDeg: azimuth }),
    fc.record({
      kind: fc.constant('pole' as const),
      tilts: tilt.map((tiltDeg) => [{ fromDay: 5, tiltDeg }]),
      turnDeg: azimuth,
      facingDeg: azimuth,
    }),
    fc.record({ kind: fc.constant('one-axis' as const), axisTiltDeg: tilt, axisAzimuthDeg: azimuth, limitDeg: tilt }),
    fc.record({
      kind: fc.constant('two-axis' as const),
      minTiltDeg: fc.constant(0),
      maxTiltDeg: tilt,
      turnDeg: azimuth,
    }),
  );
  fc.assert(
    fc.property(mounts, fc.integer({ min: -90, max: 90 }), (mount, latitudeDeg) => {
      const { tiltDeg, azimuthDeg } = pointing(mount, sunYear({ latitudeDeg, longitudeDeg: 10, utcOffsetH: 1 }));
      for (let i = 0; i < points; i++) {
        if (!(tiltDeg[i]! >= 0 && tiltDeg[i]! <= 90 && azimuthDeg[i]! >= 0 && azimuthDeg[i]! <= 360)) {
          throw new Error(`point ${i}: ${tiltDeg[i]} ${azimuthDeg[i]}`);
        }
      }
    }),
    { numRuns: 15 },
  );
});

test('a one-axis plane never gets less beam than the same plane at rest', () => {
  const axis = { axisTiltDeg: 20, axisAzimuthDeg: 190 };
  const { tiltDeg, azimuthDeg } = pointing({ kind: 'one-axis', ...axis, limitDeg: 45 }, sun);
  for (let i = 0; i < points; i++) {
    if (sun.cosZenith[i] === 0) continue;
    const turned = cosIncidence(sun.zenithDeg[i]!, sun.azimuthDeg[i]!, tiltDeg[i]!, azimuthDeg[i]!);
    const resting = cosIncidence(sun.zenithDeg[i]!, sun.azimuthDeg[i]!, 20, 190);
    if (turned < resting - 1e-9) throw new Error(`point ${i}: ${turned} turned, ${resting} at rest`);
  }
});

test('in too much wind a mount stands level or turned to its middle, and only then', () => {
  const windMs = new Float64Array(8760).fill(5);
  windMs[4000] = 15;
  windMs[4001] = 14;
  const level = pointing({ ...twoAxis, stowAboveMs: 14 }, sun, windMs);
  expect(Array.from(level.tiltDeg.subarray(16_000, 16_004))).toEqual([10, 10, 10, 10]);
  expect(level.tiltDeg.subarray(16_004)).toEqual(pointing(twoAxis, sun).tiltDeg.subarray(16_004));
  const middle = pointing({ ...pole, stowAboveMs: 14 }, sun, windMs);
  expect(middle.azimuthDeg[16_001]).toBe(180);
  expect(middle.tiltDeg[16_001]).toBe(35);
  expect(() => pointing({ ...pole, stowAboveMs: 14 }, sun)).toThrow('windMs must have 8760 hours');
});

test('a stuck mount stays where it is put from its first day to its last, over New Year too', () => {
  const stuck = [{ fromDay: 360, toDay: 3, azimuthDeg: 120 }];
  const { tiltDeg, azimuthDeg } = pointing({ ...pole, stuck }, sun);
  for (const day of [360, 364, 0, 3]) {
    expect([azimuthDeg[day * 96 + 50], tiltDeg[day * 96 + 50]]).toEqual([120, 68]);
  }
  for (const day of [359, 4]) expect(azimuthDeg[day * 96 + 50]).not.toBe(120);
  const steep = pointing({ ...twoAxis, stuck: [{ fromDay: 10, toDay: 10, azimuthDeg: 90, tiltDeg: 75 }] }, sun);
  expect([steep.azimuthDeg[1000], steep.tiltDeg[1000]]).toEqual([90, 75]);
});

test('the drive of a pole runs for the way out and back, a daily amount every day alike', () => {
  const drive = { kind: 'while-turning', powerW: 60, degPerMin: 3 } as const;
  const where = pointing(pole, sun);
  const loadW = driveLoadW({ ...pole, drive }, sun, where)!;
  const day = 200;
  let [east, west] = [360, 0];
  for (let i = day * 96; i < day * 96 + 96; i++) {
    if (sun.cosZenith[i] === 0) continue;
    east = Math.min(east, where.azimuthDeg[i]!);
    west = Math.max(west, where.azimuthDeg[i]!);
  }
  let dayWh = 0;
  for (let h = day * 24; h < day * 24 + 24; h++) dayWh += loadW[h]!;
  // Out with the sun, back at once after sunset: 60 W for as many minutes as a third of the degrees.
  expect(Math.abs(dayWh / ((2 * (west - east) * 60) / 180) - 1)).toBeLessThan(0.02);
  expect(driveLoadW({ ...pole, drive: { kind: 'daily', whPerDay: 48 } }, sun, where)![7]).toBe(2);
  expect(driveLoadW(pole, sun, where)).toBeNull();
  expect(driveLoadW({ kind: 'fixed', tiltDeg: 40, azimuthDeg: 180 }, sun, where)).toBeNull();
});

test('a one-axis drive turns as far as its rotation, which on a polar axis is 15 degrees an hour', () => {
  const mount: Mount = {
    kind: 'one-axis',
    axisTiltDeg: 46.9,
    axisAzimuthDeg: 180,
    limitDeg: 90,
    drive: { kind: 'while-turning', powerW: 60, degPerMin: 1 },
  };
  const loadW = driveLoadW(mount, sun, pointing(mount, sun))!;
  // 15 minutes of each hour at 1 degree a minute.
  expect(loadW[80 * 24 + 11]).toBeCloseTo(15, 0);
});

test('a stuck drive draws nothing while it stands', () => {
  const mount: Mount = {
    ...pole,
    drive: { kind: 'while-turning', powerW: 60 },
    stuck: [{ fromDay: 50, toDay: 60, azimuthDeg: 180 }],
  };
  const loadW = driveLoadW(mount, sun, pointing(mount, sun))!;
  for (let h = 51 * 24; h < 60 * 24; h++) expect(loadW[h]).toBe(0);
});

test('the hourly tilt is the mean of its four points', () => {
  const where = pointing(twoAxis, sun);
  const hourly = hourlyTiltDeg(where);
  const four = where.tiltDeg.subarray(2000, 2004);
  expect(hourly[500]).toBeCloseTo((four[0]! + four[1]! + four[2]! + four[3]!) / 4, 12);
});

test('a mount that cannot be built is refused with what was given', () => {
  const refuse = (mount: unknown, words: string) => expect(() => pointing(mount as Mount, sun)).toThrow(words);
  refuse({ kind: 'fixed', tiltDeg: 100, azimuthDeg: 0 }, 'tiltDeg must be 0 to 90, got 100');
  refuse({ kind: 'fixed', tiltDeg: 10, azimuthDeg: Number.NaN }, 'azimuthDeg must be 0 to 360, got NaN');
  refuse({ kind: 'seasonal', azimuthDeg: 180, tilts: [] }, 'at least one period');
  refuse({ kind: 'seasonal', azimuthDeg: 180, tilts: [{ fromDay: 365, tiltDeg: 3 }] }, 'fromDay of a tilt');
  refuse({ kind: 'pole', turnDeg: 400, tilts }, 'turnDeg must be 0 to 360, got 400');
  refuse({ kind: 'two-axis', minTiltDeg: 50, maxTiltDeg: 40 }, 'maxTiltDeg must be 50 to 90, got 40');
  refuse({ kind: 'wheel' }, 'got wheel');
});

test('each part of a moving mount is refused by its own name', () => {
  const refuse = (mount: unknown, words: string) => expect(() => pointing(mount as Mount, sun)).toThrow(words);
  const oneAxis = { kind: 'one-axis', axisTiltDeg: 20, axisAzimuthDeg: 180, limitDeg: 60 };
  const stuck = { fromDay: 10, toDay: 20, azimuthDeg: 180 };
  refuse({ kind: 'seasonal', azimuthDeg: 361, tilts }, 'azimuthDeg must be 0 to 360, got 361');
  refuse({ kind: 'seasonal', azimuthDeg: 180, tilts: [{ fromDay: 3, tiltDeg: 91 }] }, 'tiltDeg of a tilt');
  refuse({ kind: 'seasonal', azimuthDeg: 180, tilts: [tilts[0], { fromDay: 90, tiltDeg: 3 }] }, 'on different days');
  refuse({ ...pole, tilts: [] }, 'at least one period');
  refuse({ ...pole, facingDeg: -1 }, 'facingDeg must be 0 to 360, got -1');
  refuse({ ...oneAxis, axisTiltDeg: 91 }, 'axisTiltDeg must be 0 to 90, got 91');
  refuse({ ...oneAxis, axisAzimuthDeg: 400 }, 'axisAzimuthDeg must be 0 to 360, got 400');
  refuse({ ...oneAxis, limitDeg: 91 }, 'limitDeg must be 0 to 90, got 91');
  refuse({ ...twoAxis, minTiltDeg: -1 }, 'minTiltDeg must be 0 to 90, got -1');
  refuse({ ...twoAxis, turnDeg: 361 }, 'turnDeg must be 0 to 360, got 361');
  refuse({ ...twoAxis, facingDeg: 361 }, 'facingDeg must be 0 to 360, got 361');
  for (const mount of [pole, oneAxis, twoAxis]) {
    refuse({ ...mount, drive: { kind: 'while-turning', powerW: -1 } }, 'powerW of the drive');
    refuse({ ...mount, drive: { kind: 'while-turning', powerW: 10, degPerMin: 0 } }, 'degPerMin of the drive');
    refuse({ ...mount, drive: { kind: 'daily', whPerDay: -1 } }, 'whPerDay of the drive');
    refuse({ ...mount, stowAboveMs: -1 }, 'stowAboveMs');
    refuse({ ...mount, stuck: [{ ...stuck, fromDay: 365 }] }, 'fromDay of a stuck time');
    refuse({ ...mount, stuck: [{ ...stuck, toDay: 0.5 }] }, 'toDay of a stuck time');
    refuse({ ...mount, stuck: [{ ...stuck, azimuthDeg: 361 }] }, 'azimuthDeg of a stuck time');
    refuse({ ...mount, stuck: [{ ...stuck, tiltDeg: 91 }] }, 'tiltDeg of a stuck time');
  }
});

test('the last day of the year is a day to be set or stuck on', () => {
  const last = pointing({ kind: 'seasonal', azimuthDeg: 180, tilts: [{ fromDay: 364, tiltDeg: 5 }] }, sun);
  expect(new Set(last.tiltDeg)).toEqual(new Set([5]));
  const stuck = [{ fromDay: 364, toDay: 364, azimuthDeg: 77, tiltDeg: 12 }];
  const { tiltDeg, azimuthDeg } = pointing({ ...twoAxis, stuck }, sun);
  expect([tiltDeg[points - 1], azimuthDeg[points - 1], azimuthDeg[364 * 96]]).toEqual([12, 77, 77]);
  expect(azimuthDeg[364 * 96 - 1]).not.toBe(77);
});

test('a stuck mount without a tilt keeps that of its axis, or of its latitude within its limits', () => {
  const at = (mount: Mount) => pointing(mount, sun).tiltDeg[10 * 96 + 48];
  const stuck = [{ fromDay: 10, toDay: 10, azimuthDeg: 90 }];
  const oneAxis = { kind: 'one-axis', axisTiltDeg: 33, axisAzimuthDeg: 180, limitDeg: 60 } as const;
  expect(at({ ...oneAxis, stuck })).toBe(33);
  // The sun stands at 46.9 degrees north.
  expect(at({ ...twoAxis, stuck })).toBe(46.9);
  expect(at({ ...twoAxis, maxTiltDeg: 40, stuck })).toBe(40);
  expect(at({ ...twoAxis, minTiltDeg: 60, stuck })).toBe(60);
  const south = sunYear({ latitudeDeg: -30, longitudeDeg: 20, utcOffsetH: 2 });
  expect(pointing({ ...twoAxis, stuck }, south).tiltDeg[10 * 96 + 48]).toBe(30);
});

test('in the south a mount turns about north, and stands there in a storm', () => {
  const south = sunYear({ latitudeDeg: -46.9, longitudeDeg: 170, utcOffsetH: 11 });
  const windMs = new Float64Array(8760).fill(20);
  expect(new Set(pointing({ ...pole, stowAboveMs: 14 }, south, windMs).azimuthDeg)).toEqual(new Set([0]));
  expect(new Set(pointing({ ...pole, facingDeg: 20, stowAboveMs: 14 }, south, windMs).azimuthDeg)).toEqual(
    new Set([20]),
  );
  const { azimuthDeg } = pointing({ ...pole, turnDeg: 180 }, south);
  for (let i = 0; i < points; i++) {
    if (azimuthDeg[i]! > 90 && azimuthDeg[i]! < 270) throw new Error(`point ${i} turns beyond the stops`);
  }
});

test('a level one-axis plane stows level; one on a slope at the slope of its axis', () => {
  const windMs = new Float64Array(8760).fill(20);
  const stowed = (axisTiltDeg: number) =>
    pointing({ kind: 'one-axis', axisTiltDeg, axisAzimuthDeg: 190, limitDeg: 60, stowAboveMs: 14 }, sun, windMs);
  expect(new Set(stowed(0).tiltDeg)).toEqual(new Set([0]));
  expect(new Set(stowed(0).azimuthDeg)).toEqual(new Set([190]));
  expect(stowed(25).tiltDeg[5000]).toBeCloseTo(25, 9);
  expect(stowed(25).azimuthDeg[5000]).toBeCloseTo(190, 9);
});

// At 80 degrees north the sun is down for months: nobody waits for a morning by turning there.
test('through polar night a mount stands stowed', () => {
  const polar = sunYear({ latitudeDeg: 80, longitudeDeg: 0, utcOffsetH: 0 });
  const { tiltDeg, azimuthDeg } = pointing({ ...twoAxis, facingDeg: 170 }, polar);
  expect([tiltDeg[350 * 96], azimuthDeg[350 * 96]]).toEqual([10, 170]);
  expect([tiltDeg[10 * 96], azimuthDeg[10 * 96]]).toEqual([10, 170]);
});

test('a drive draws 6 degrees a minute unless told, over azimuth and tilt one after the other', () => {
  // From level toward the south to 60 degrees toward 190 degrees between two points of hour 100, and back in the next.
  const where = { tiltDeg: new Float64Array(points), azimuthDeg: new Float64Array(points).fill(180) };
  where.tiltDeg[402] = 60;
  where.azimuthDeg[402] = 190;
  const drive = { kind: 'while-turning', powerW: 90 } as const;
  const load = (mount: Mount) => driveLoadW(mount, sun, where)![100];
  // 70 degrees there and 70 back at 6 a minute: 140 / 360 of an hour; a pole's motor turns its azimuth alone.
  expect(load({ ...twoAxis, drive })).toBeCloseTo((90 * 140) / 360, 9);
  expect(load({ ...pole, drive })).toBeCloseTo((90 * 20) / 360, 9);
  const oneAxis: Mount = { kind: 'one-axis', axisTiltDeg: 0, axisAzimuthDeg: 180, limitDeg: 60, drive };
  // From level to 60 degrees, whichever way, is a turn of 60.
  expect(load(oneAxis)).toBeCloseTo((90 * 120) / 360, 9);
  expect(driveLoadW(oneAxis, sun, where)![101]).toBe(0);
});
