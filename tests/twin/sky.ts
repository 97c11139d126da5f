import { aboveTheAirWm2, airMass, minutesPerYear, type Sun } from './sun.js';

const rad = Math.PI / 180;

/** Hourly means, 8760 each: what weather files hold. */
export interface HourlyLight {
  ghiWm2: Float64Array;
  dniWm2: Float64Array;
  dhiWm2: Float64Array;
  /** Of the ground, snow counted in: a given column. */
  albedo: Float64Array;
}

/** How a plane is held. Tilts hold from their day (0 is 1 January) until the next. */
export type Hold =
  | { kind: 'set'; azimuthDeg: number; tilts: { fromDay: number; tiltDeg: number }[] }
  | { kind: 'pole'; facingDeg: number; turnDeg: number; tilts: { fromDay: number; tiltDeg: number }[] }
  | { kind: 'two-axis'; facingDeg: number; turnDeg: number; minTiltDeg: number; maxTiltDeg: number };

/** Light on a plane by minutes, W/m2: before the glass, and behind it. The skyline is not in it. */
export interface PlaneLight {
  planeWm2: Float64Array;
  behindGlassWm2: Float64Array;
}

/**
 * Light on a plane, minute by minute, from the hour's means and the minute's own sun.
 *
 * Within an hour the beam is constant while the sun is up and so is the diffuse light; a level plane gets the hour's
 * global irradiance back.
 */
export function lightOnPlane(light: HourlyLight, sun: Sun, hold: Hold, glass: boolean): PlaneLight {
  const planeWm2 = new Float64Array(minutesPerYear);
  const behindGlassWm2 = new Float64Array(minutesPerYear);
  for (let h = 0; h < 8760; h++) {
    if (light.ghiWm2[h]! <= 0) continue;
    const day = Math.floor(h / 24);
    const { upMinutes, meanCosUp, normal, beam, diffuse, fromSun, reflected } = lightOfHour(light, sun, h);
    for (let m = h * 60; m < h * 60 + 60; m++) {
      const cosZ = sun.cosZenith[m]!;
      if (upMinutes > 0 && cosZ === 0) continue;
      const zenith = Math.min(90, sun.zenithDeg[m]!);
      const azimuth = sun.azimuthDeg[m]!;
      const tilt = tiltOf(hold, day, zenith) * rad;
      const turned = (azimuth - facingOf(hold, azimuth)) * rad;
      // Duffie and Beckman eq. 1.6.3.
      const cosIncidence = Math.max(
        0,
        cosZ * Math.cos(tilt) + (cosZ > 0 ? Math.sqrt(1 - cosZ * cosZ) : 0) * Math.sin(tilt) * Math.cos(turned),
      );
      const view = (1 + Math.cos(tilt)) / 2;
      let F1 = 0;
      let F2 = 0;
      if (cosZ > 0 && diffuse > 0) {
        // The longer the way through the air, the less of the hour's light comes just then.
        const delta = (((fromSun * cosZ) / meanCosUp) * airMass(zenith)) / normal;
        const bins = perez(fromSun, beam, delta, zenith);
        F1 = bins.F1;
        F2 = bins.F2;
      }
      // Perez et al. (1990), Solar Energy 44, 271-289, eq. 9: circumsolar, dome and horizon. What comes from around the
      // sun is as steady within the hour as the beam: b is the hour's.
      const around = (F1 * cosIncidence) / Math.max(Math.cos(85 * rad), meanCosUp);
      // Where the horizon takes more than the dome has, nothing is left of both.
      const dome = Math.max(0, (1 - F1) * view + F2 * Math.sin(tilt));
      const direct = beam * cosIncidence + diffuse * around;
      const ground = reflected * (1 - view); // Liu and Jordan (1963)
      planeWm2[m] = direct + diffuse * dome + ground;
      behindGlassWm2[m] = glass
        ? direct * throughGlass(cosIncidence) + diffuse * dome * skyGlass(tilt / rad) + ground * groundGlass(tilt / rad)
        : planeWm2[m]!;
    }
  }
  return { planeWm2, behindGlassWm2 };
}

/**
 * The light of an hour's lit part: the minutes with the sun up, or all of them in twilight. W/m2.
 *
 * In the hours of sunrise and sunset the beam that closes the hour is taken, between the file's beam as a mean over the
 * hour and as one over its sunlit part.
 */
function lightOfHour(light: HourlyLight, sun: Sun, h: number) {
  const ghi = light.ghiWm2[h]!;
  const normal = aboveTheAirWm2(Math.floor(h / 24));
  let upMinutes = 0;
  let cosSum = 0;
  for (let m = h * 60; m < h * 60 + 60; m++) {
    if (sun.cosZenith[m]! > 0) upMinutes++;
    cosSum += sun.cosZenith[m]!;
  }
  const meanCos = cosSum / 60;
  const meanCosUp = upMinutes > 0 ? cosSum / upMinutes : 0;
  let beam = 0;
  if (upMinutes > 0) {
    const closing = (ghi - light.dhiWm2[h]!) / meanCos;
    const dni = light.dniWm2[h]!;
    beam = Math.min(Math.max(closing, dni), (dni * 60) / upMinutes, normal, ghi / meanCos);
  }
  const litMinutes = upMinutes > 0 ? upMinutes : 60;
  const diffuse = (Math.max(0, ghi - beam * meanCos) * 60) / litMinutes;
  const reflected = (ghi * light.albedo[h]! * 60) / litMinutes;
  // Above the air the sun sends a level plane no more than this. What a file has beyond belongs to no sun.
  const fromSun = Math.min(diffuse, normal * meanCosUp);
  return { upMinutes, meanCosUp, normal, beam, diffuse, fromSun, reflected };
}

const tiltOf = (hold: Hold, day: number, zenithDeg: number): number => {
  if (hold.kind === 'two-axis') return Math.min(hold.maxTiltDeg, Math.max(hold.minTiltDeg, zenithDeg));
  // The period that began last; before the first one, that of the year before.
  let tiltDeg = hold.tilts.reduce((last, period) => (period.fromDay > last.fromDay ? period : last)).tiltDeg;
  let began = -1;
  for (const period of hold.tilts) {
    if (period.fromDay <= day && period.fromDay > began) {
      began = period.fromDay;
      tiltDeg = period.tiltDeg;
    }
  }
  return tiltDeg;
};

const facingOf = (hold: Hold, sunAzimuthDeg: number): number => {
  if (hold.kind === 'set') return hold.azimuthDeg;
  let turn = (sunAzimuthDeg - hold.facingDeg) % 360;
  if (turn > 180) turn -= 360;
  if (turn < -180) turn += 360;
  return hold.facingDeg + Math.min(hold.turnDeg / 2, Math.max(-hold.turnDeg / 2, turn));
};

// Perez et al. (1990), table 6 as printed: clearness from, F11, F12, F13, F21, F22, F23.
// biome-ignore format: as printed
const bins: readonly (readonly number[])[] = [
  [1,     -0.008,  0.588, -0.062, -0.060,  0.072, -0.022],
  [1.065,  0.130,  0.683, -0.151, -0.019,  0.066, -0.029],
  [1.230,  0.330,  0.487, -0.221,  0.055, -0.064, -0.026],
  [1.500,  0.568,  0.187, -0.295,  0.109, -0.152, -0.014],
  [1.950,  0.873, -0.392, -0.362,  0.226, -0.462,  0.001],
  [2.800,  1.132, -1.237, -0.412,  0.288, -0.823,  0.056],
  [4.500,  1.060, -1.600, -0.359,  0.264, -1.127,  0.131],
  [6.200,  0.678, -0.327, -0.250,  0.156, -1.377,  0.251],
];

const brightness = { F1: 0, F2: 0 };

/** Perez et al. (1990), eqs. 1 and 6 to 8, of a brightness by eq. 2; F1 no more than all of the diffuse light. */
function perez(diffuse: number, beam: number, delta: number, zenithDeg: number): { F1: number; F2: number } {
  const z = zenithDeg * rad;
  const clearness = ((diffuse + beam) / diffuse + 1.041 * z ** 3) / (1 + 1.041 * z ** 3);
  let row = bins[0]!;
  for (const bin of bins) if (clearness >= bin[0]!) row = bin;
  brightness.F1 = Math.min(1, Math.max(0, row[1]! + row[2]! * delta + row[3]! * z));
  brightness.F2 = row[4]! + row[5]! * delta + row[6]! * z;
  return brightness;
}

/** De Soto, Klein and Beckman (2006), Solar Energy 80, 78-88, eqs. 14 to 16: n 1.526, K 4 /m, L 2 mm. */
function transmittance(incidence: number): number {
  const inside = Math.asin(Math.sin(incidence) / 1.526);
  const absorbed = Math.exp((-4 * 0.002) / Math.cos(inside));
  if (incidence < 1e-3) return absorbed * (1 - ((1.526 - 1) / (1.526 + 1)) ** 2);
  const minus = inside - incidence;
  const plus = inside + incidence;
  return (
    absorbed * (1 - 0.5 * (Math.sin(minus) ** 2 / Math.sin(plus) ** 2 + Math.tan(minus) ** 2 / Math.tan(plus) ** 2))
  );
}

const straightOn = transmittance(0);

const throughGlass = (cosIncidence: number): number =>
  cosIncidence > 0 ? Math.max(0, transmittance(Math.acos(Math.min(1, cosIncidence)))) / straightOn : 0;

/** Brandemuehl and Beckman (1980), Solar Energy 24, 511-513: equivalent angles of sky and ground, degrees. */
const skyGlass = (tiltDeg: number): number =>
  throughGlass(Math.cos((59.7 - 0.1388 * tiltDeg + 0.001497 * tiltDeg ** 2) * rad));
const groundGlass = (tiltDeg: number): number =>
  throughGlass(Math.cos((90 - 0.5788 * tiltDeg + 0.002693 * tiltDeg ** 2) * rad));
