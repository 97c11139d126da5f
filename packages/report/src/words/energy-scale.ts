import { figure } from './figures.js';

/** A unit of energy for a table: Wh where the largest figure would hardly show in kWh. */
export interface EnergyScale {
  unit: 'Wh' | 'kWh';
  /** An amount in Wh as a figure in that unit. */
  textOf: (wh: number) => string;
}

/** The scale in which figures up to `largestWh`, and sums of them up to `largestSumWh`, are read at a glance. */
export function energyScale(largestWh: number, largestSumWh: number): EnergyScale {
  if (largestWh < 1000 && largestSumWh < 10_000)
    return { unit: 'Wh', textOf: (wh) => figure(wh, largestWh < 10 ? 1 : 0) };
  return { unit: 'kWh', textOf: (wh) => figure(wh / 1000, largestWh < 100_000 ? 2 : 1) };
}

/** `612 Wh`, `3.4 kWh`: an amount in kWh in the unit that shows it. */
export const energyText = (kWh: number): string =>
  Math.abs(kWh) < 0.9995 && Math.abs(kWh) > 0
    ? `${figure(kWh * 1000, Math.abs(kWh) < 0.00995 ? 1 : 0)} Wh`
    : `${figure(kWh)} kWh`;

/** The scale in which a table of months is read, whose largest energy of one month is `largestKWh`. */
export function monthEnergyScale(largestKWh: number): EnergyScale {
  if (largestKWh < 10) return { unit: 'Wh', textOf: (wh) => figure(wh, 0) };
  const digits = largestKWh < 100 ? 1 : 0;
  return { unit: 'kWh', textOf: (wh) => figure(wh / 1000, digits) };
}
