import { daysPerYear, hoursPerYear, mustLie, OutOfRangeError } from '@wintergap/ground';
import { ratedPowerYear } from './derating.js';
import { exerciseMask } from './exercise.js';
import { type FuelLine, fuelLine } from './fuel-line.js';
import { acceptedMask } from './hours-accepted.js';
import type { GeneratorSettings } from './settings.js';
import type { StartFailure } from './start-failure.js';
import { checkStartRules, startThresholdYear, watchedMask } from './start-threshold.js';

/** Where and under which sky the engine stands. */
export interface GeneratorPlace {
  elevationM: number;
  /** Hourly air temperature, 8760. */
  airC: Float64Array;
  /** Weekday of 1 January, 0 for Sunday; Monday (1) unless given. Matters only where weekdays are named. */
  firstWeekday?: number;
  /** Sun of each of the 365 days, Wh/m2; needed by `dull-tomorrow` rules only. */
  dailySunWhM2?: Float64Array;
}

/** A generator as plain numbers and hourly arrays, ready for the loop over the year. */
export interface CompiledGenerator extends FuelLine {
  bus: 'ac' | 'dc';
  /** Most output in each hour: of an AC set at its terminals, of a DC set at the bank's bus, W. */
  ratedW: Float64Array;
  /** Most DC power of the charger, and its efficiency; without limit and 1 for a DC set. */
  chargerW: number;
  chargerEfficiency: number;
  /** 1 for hours in which a start is possible: accepted, and somebody or something watches. */
  startAllowed: Uint8Array;
  /** 0 for hours in which a run under way must end. */
  runAllowed: Uint8Array;
  /** State of charge below which the engine starts in each hour; 0 for never. */
  startBelow: Float64Array;
  /** Bank voltage below which it starts, 0 for never, and for how long it must have been below, h. */
  startBelowV: number;
  startBelowVForH: number;
  /** State of charge at which a run ends; 1 when no rule names one. */
  stopAbove: number;
  stopAtBulkEnd: boolean;
  /** Days without a full bank after which the engine starts and runs until it is full; 0 for never. */
  fullEveryDays: number;
  minimumRunH: number;
  warmUpH: number;
  coolDownH: number;
  /** 1 for hours in which an exercise run is due unless the engine has run since, and its length, h. */
  exerciseAt: Uint8Array;
  exerciseH: number;
  /** Time between exercise runs, h; 0 without. One is left out when the engine has run since the date before. */
  exerciseEveryH: number;
  /** A chance of 0 when the engine always starts. */
  startFailure: StartFailure;
  /** Time until a failed start is tried again, h; above 0. */
  retryAfterH: number;
  /** Output below which the engine is underloaded, W, measured like `ratedW`. */
  minimumLoadW: number;
}

/**
 * Turns a generator's description into numbers and arrays for the loop over the year.
 *
 * The losses of a DC set on the way to the bus are folded in: its rating and its fuel line are those at the bus.
 *
 * @throws OutOfRangeError or TypeError when a setting is out of range or missing
 */
export function compileGenerator(settings: GeneratorSettings, place: GeneratorPlace): CompiledGenerator {
  checkSettings(settings);
  const { output } = settings;
  const { firstWeekday = 1 } = place;
  const toBus = output.bus === 'dc' ? (output.efficiency ?? 1) : 1;
  const ratedW = ratedPowerYear(settings, place.elevationM, place.airC);
  if (toBus < 1) for (let h = 0; h < hoursPerYear; h++) ratedW[h]! *= toBus;
  const line = fuelLine(settings.fuel, output.powerW);

  const accepted = acceptedMask(settings.accepted ?? {}, firstWeekday);
  const exerciseAt = settings.exercise ? exerciseMask(settings.exercise, accepted) : new Uint8Array(hoursPerYear);
  const startAllowed = watchedMask(settings.start);
  for (let h = 0; h < hoursPerYear; h++) if (accepted[h] === 0) startAllowed[h] = 0;
  const startBelow = startThresholdYear(settings.start, startAllowed, place.dailySunWhM2);
  for (let h = 0; h < hoursPerYear; h++) if (exerciseAt[h] === 1) startAllowed[h] = 1;
  const endsRun = settings.accepted?.endsRun ?? true;

  let startBelowV = 0;
  let startBelowVForH = 0;
  for (const rule of settings.start) {
    if (rule.kind !== 'voltage') continue;
    startBelowV = rule.belowV;
    startBelowVForH = rule.forMin / 60;
  }
  let stopAbove = 1;
  for (const rule of settings.stop) if (rule.kind === 'charge') stopAbove = Math.min(stopAbove, rule.above);

  const minimumLoad = settings.minimumLoad ?? (settings.fuel.kind === 'diesel' ? 0.3 : 0);
  const startFailure = settings.startFailure ?? { chance: 0, seed: 0, retryAfterH: 1 };
  return {
    bus: output.bus,
    ratedW,
    chargerW: output.bus === 'ac' ? output.charger.powerW : Number.POSITIVE_INFINITY,
    chargerEfficiency: output.bus === 'ac' ? output.charger.efficiency : 1,
    fuelIdleLPerH: line.fuelIdleLPerH,
    fuelLPerWh: line.fuelLPerWh / toBus,
    startAllowed,
    runAllowed: endsRun ? accepted : new Uint8Array(hoursPerYear).fill(1),
    startBelow,
    startBelowV,
    startBelowVForH,
    stopAbove,
    stopAtBulkEnd: settings.stop.some((rule) => rule.kind === 'bulk-end'),
    fullEveryDays: settings.fullEveryDays ?? 0,
    minimumRunH: settings.minimumRunH ?? 0,
    warmUpH: (settings.warmUpMin ?? 0) / 60,
    coolDownH: (settings.coolDownMin ?? 0) / 60,
    exerciseAt,
    exerciseH: (settings.exercise?.minutes ?? 0) / 60,
    exerciseEveryH: (settings.exercise?.everyDays ?? 0) * 24,
    startFailure,
    retryAfterH: startFailure.retryAfterH,
    minimumLoadW: minimumLoad * output.powerW * toBus,
  };
}

function checkSettings(settings: GeneratorSettings): void {
  const { output, stop, startFailure } = settings;
  mustLie('output.powerW', output.powerW, 1, 1e9);
  if (output.bus === 'dc') {
    mustLie('output.efficiency', output.efficiency ?? 1, 0.1, 1);
  } else {
    mustLie('output.charger.powerW', output.charger.powerW, 0, 1e9);
    mustLie('output.charger.efficiency', output.charger.efficiency, 0.1, 1);
  }
  checkStartRules(settings.start);
  if (stop.length === 0) throw new OutOfRangeError('stop must have at least one rule');
  let highestStart = 0;
  for (const rule of settings.start) if (rule.kind !== 'voltage') highestStart = Math.max(highestStart, rule.below);
  for (const rule of stop) {
    if (rule.kind !== 'charge') continue;
    mustLie('stop above', rule.above, 0, 1);
    if (rule.above <= highestStart) {
      throw new OutOfRangeError(`stop above must be higher than start below ${highestStart}, got ${rule.above}`);
    }
  }
  mustLie('fullEveryDays', settings.fullEveryDays ?? 0, 0, daysPerYear);
  mustLie('minimumRunH', settings.minimumRunH ?? 0, 0, 168);
  mustLie('warmUpMin', settings.warmUpMin ?? 0, 0, 120);
  mustLie('coolDownMin', settings.coolDownMin ?? 0, 0, 120);
  mustLie('minimumLoad', settings.minimumLoad ?? 0, 0, 1);
  if (startFailure) {
    mustLie('startFailure.chance', startFailure.chance, 0, 1);
    mustLie('startFailure.retryAfterH', startFailure.retryAfterH, 0.05, 720);
    if (!Number.isInteger(startFailure.seed)) {
      throw new OutOfRangeError(`startFailure.seed must be a whole number, got ${startFailure.seed}`);
    }
  }
}
