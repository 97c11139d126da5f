import { OutOfRangeError } from '@wintergap/ground';

// IEC 60028, international standard of resistance for copper: annealed copper at 20 degC.
const copperOhmM20 = 1.724e-8;
const copperPerK = 0.00393;

/** Length and cross-section that the lay of the strands adds: a stranded conductor of the same metal has 2 % more. */
const strandLay = 1.02;

/** Diameter of an American wire gauge number, mm (ASTM B258); 1/0 to 4/0 are 0, -1, -2, -3. */
export function awgDiameterMm(gauge: number): number {
  if (!(Number.isInteger(gauge) && gauge >= -3 && gauge <= 40)) {
    throw new OutOfRangeError(`wire gauge must be a whole number from 40 down to -3 (4/0), got ${gauge}`);
  }
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/** Metal cross-section of an American wire gauge number, mm2. */
export function awgAreaMm2(gauge: number): number {
  return (Math.PI / 4) * awgDiameterMm(gauge) ** 2;
}

/** Resistivity of copper, ohm m. */
function copperOhmM(conductorC: number): number {
  return copperOhmM20 * (1 + copperPerK * (conductorC - 20));
}

/**
 * Resistance per metre of one stranded copper conductor, ohm/m.
 *
 * From the metal's cross-section. Metric sizes are names, not areas: the ceilings of IEC 60228 lie 3 to 6 % above
 * this, for 50 mm2 10 %.
 */
export function conductorOhmPerM(areaMm2: number, conductorC: number): number {
  if (!(areaMm2 >= 0.05 && areaMm2 <= 2000)) throw new OutOfRangeError(`areaMm2 must be 0.05 to 2000, got ${areaMm2}`);
  if (!(conductorC >= -80 && conductorC <= 150)) {
    throw new OutOfRangeError(`conductorC must be -80 to 150, got ${conductorC}`);
  }
  return (strandLay * copperOhmM(conductorC)) / (areaMm2 * 1e-6);
}

export interface Cable {
  /** One way, m; the current runs it twice. */
  lengthM: number;
  areaMm2: number;
  /** Temperature of the metal, degC. */
  conductorC: number;
}

/** Resistance there and back, ohm. */
export function cableOhm(cable: Cable): number {
  if (!(cable.lengthM >= 0 && cable.lengthM <= 10_000)) {
    throw new OutOfRangeError(`lengthM must be 0 to 10000, got ${cable.lengthM}`);
  }
  return 2 * cable.lengthM * conductorOhmPerM(cable.areaMm2, cable.conductorC);
}

/** Voltage lost in a cable, V. */
export function voltageDropV(currentA: number, cable: Cable): number {
  return currentA * cableOhm(cable);
}

// Copper, 75 degC insulation, up to three conductors in a raceway at 30 degC, 14 to 4/0 AWG: the table of a common
// US code, from memory. A rule of thumb to catch gross errors.
const hintGauge = [14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3];
const hintA = [20, 25, 35, 50, 65, 85, 100, 115, 130, 150, 175, 200, 230];

/**
 * Rule-of-thumb ampacity of a copper conductor, A; between gauges by a straight line in the logarithms. A hint only:
 * the local code sets the allowed current, with its corrections for heat, bundling and terminals.
 */
export function ampacityHintA(areaMm2: number): number {
  if (!(areaMm2 > 0)) throw new OutOfRangeError(`areaMm2 must be above 0, got ${areaMm2}`);
  let k = 0;
  while (k < hintGauge.length - 2 && awgAreaMm2(hintGauge[k + 1]!) < areaMm2) k++;
  const low = Math.log(awgAreaMm2(hintGauge[k]!));
  const high = Math.log(awgAreaMm2(hintGauge[k + 1]!));
  const share = (Math.log(areaMm2) - low) / (high - low);
  return hintA[k]! * (hintA[k + 1]! / hintA[k]!) ** share;
}

// Ratings commonly sold for DC fuses and breakers, from memory.
const fuseRatingsA = [
  1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250,
  300, 350, 400,
];

/** Smallest common fuse or breaker rating that is not below `currentA`, A; null above 400 A. A hint only. */
export function fuseHintA(currentA: number): number | null {
  return fuseRatingsA.find((rating) => rating >= currentA - 1e-9) ?? null;
}
