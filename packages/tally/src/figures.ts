import type { Ledger } from './ledger.js';
import { monthlyHoursAbove, monthlySums, yearSum } from './months.js';

/**
 * The figures of a ledger, each from its own columns: the summary puts all of them together, and who runs many years asks
 * for the few he needs. Energies are kWh; twelve months, January first.
 */

export const kWh = (wh: number): number => wh / 1000;

/** Energy of a column, of each month and of the year. */
export function energyByMonth(wh: Float64Array): { kWh: number; months: number[] } {
  const months = Array.from(monthlySums(wh), kWh);
  return { kWh: total(months), months };
}

/** Engine time, starts and fuel. */
export function engineFigures({ generatorH, starts, fuelL }: Ledger): {
  hours: number;
  starts: number;
  fuelLitres: number;
  months: { hours: number; starts: number; fuelLitres: number }[];
} {
  const hours = monthlySums(generatorH);
  const startsOf = monthlySums(starts);
  const fuel = monthlySums(fuelL);
  return {
    hours: total(hours),
    starts: total(startsOf),
    fuelLitres: total(fuel),
    months: Array.from(hours, (of, m) => ({ hours: of, starts: startsOf[m]!, fuelLitres: fuel[m]! })),
  };
}

/**
 * What was asked for, what was served, and what stayed dark.
 *
 * @param acLoadWh as asked for; energies of the hours
 */
export function loadFigures(
  { acServedWh, dcServedWh, darkWh, darkH }: Ledger,
  acLoadWh: Float64Array,
  dcLoadWh: Float64Array,
): { acKWh: number; dcKWh: number; servedKWh: number; darkKWh: number; darkHours: number } {
  return {
    acKWh: kWh(yearSum(acLoadWh)),
    dcKWh: kWh(yearSum(dcLoadWh)),
    servedKWh: kWh(yearSum(acServedWh) + yearSum(dcServedWh)),
    darkKWh: kWh(yearSum(darkWh)),
    darkHours: yearSum(darkH),
  };
}

interface ArrayMonth {
  planeKWhPerM2: number;
  availableKWh: number;
  usedKWh: number;
  throttledKWh: number;
  clippedKWh: number;
}

/** The arrays' light and energy. */
export function arrayFigures(ledger: Ledger, planeWm2: Float64Array): ArrayMonth & { months: ArrayMonth[] } {
  const plane = energyByMonth(planeWm2);
  const available = energyByMonth(ledger.arrayAvailableWh);
  const used = energyByMonth(ledger.arrayUsedWh);
  const throttled = energyByMonth(ledger.throttledWh);
  const clipped = energyByMonth(ledger.clippedWh);
  return {
    planeKWhPerM2: plane.kWh,
    availableKWh: available.kWh,
    usedKWh: used.kWh,
    throttledKWh: throttled.kWh,
    clippedKWh: clipped.kWh,
    months: plane.months.map((planeKWhPerM2, m) => ({
      planeKWhPerM2,
      availableKWh: available.months[m]!,
      usedKWh: used.months[m]!,
      throttledKWh: throttled.months[m]!,
      clippedKWh: clipped.months[m]!,
    })),
  };
}

/** Load that sun and bank could not meet at that moment. */
export function shortfallFigures({ shortfallWh }: Ledger): {
  kWh: number;
  hours: number;
  months: { kWh: number; hours: number }[];
} {
  const energy = energyByMonth(shortfallWh);
  const hours = monthlyHoursAbove(shortfallWh, 0);
  return {
    kWh: energy.kWh,
    hours: total(hours),
    months: energy.months.map((of, m) => ({ kWh: of, hours: hours[m]! })),
  };
}

/** How low, how cold and how hard used the bank was. */
export function bankFigures(ledger: Ledger): {
  minStateOfCharge: number;
  meanStateOfCharge: number;
  minTemp: number;
  maxTemp: number;
  chargeKWh: number;
  dischargeKWh: number;
} {
  return {
    minStateOfCharge: smallest(ledger.lowestStateOfCharge),
    meanStateOfCharge: yearSum(ledger.stateOfCharge) / ledger.stateOfCharge.length,
    minTemp: smallest(ledger.bankC),
    maxTemp: largest(ledger.bankC),
    chargeKWh: kWh(yearSum(ledger.bankChargeWh)),
    dischargeKWh: kWh(yearSum(ledger.bankDischargeWh)),
  };
}

/** The least of the values; infinity of none. */
export function smallest(values: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let h = 0; h < values.length; h++) least = Math.min(least, values[h]!);
  return least;
}

function largest(values: Float64Array): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let h = 0; h < values.length; h++) most = Math.max(most, values[h]!);
  return most;
}

function total(values: ArrayLike<number>): number {
  let sum = 0;
  for (let m = 0; m < values.length; m++) sum += values[m]!;
  return sum;
}
