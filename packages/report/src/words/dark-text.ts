import type { Summary } from '@wintergap/tally';
import { figure } from './figures.js';

const smallestKWh = 0.05;

/** How much load stays dark and for how long, to begin a sentence; nothing of either is written as none. */
export function darkText(load: Pick<Summary['load'], 'darkKWh' | 'darkHours'>): string {
  const amount = darkKWhText(load.darkKWh);
  return `${amount[0]!.toUpperCase()}${amount.slice(1)} of load ${load.darkKWh < smallestKWh ? 'stays' : 'stay'} dark, over ${darkHoursText(load.darkHours)}`;
}

/** `12 kWh`, `less than 0.1 kWh` of what is above nothing. */
export const darkKWhText = (kWh: number): string =>
  kWh > 0 && kWh < smallestKWh ? 'less than 0.1 kWh' : `${figure(kWh)} kWh`;

/** `3.5 h`, `20 min`, `less than a minute`. */
export function darkHoursText(hours: number): string {
  if (hours >= 1) return `${figure(hours)} h`;
  return hours * 60 < 1 ? 'less than a minute' : `${figure(hours * 60, 0)} min`;
}
