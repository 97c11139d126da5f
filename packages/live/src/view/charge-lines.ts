import type { Across, Line } from './framed-chart.js';

/** Tenths of a hundredth of a unit are seen by nobody. */
const at = (value: number): string => value.toFixed(2);

/** Points of a row of days, each at the middle of its day. */
const points = (days: readonly number[], x: Across, y: Across): string[] =>
  days.map((value, day) => `${at(x(day + 0.5))},${at(y(value))}`);

/** The lowest charge of each day as a line over its area, and the charge at noon as dots. */
export const chargeLines = (lowest: readonly number[], noon: readonly number[], narrow: boolean): Line[] => [
  {
    look: { fill: 'var(--charge)', 'fill-opacity': 0.16 },
    course: (x, y) =>
      `M${at(x(0.5))},${at(y(0))}L${points(lowest, x, y).join('L')}L${at(x(lowest.length - 0.5))},${at(y(0))}Z`,
  },
  {
    look: { fill: 'none', stroke: 'var(--noon)', 'stroke-width': narrow ? 2 : 3.4, 'stroke-linecap': 'round' },
    course: (x, y) =>
      points(noon, x, y)
        .map((point) => `M${point}h0`)
        .join(''),
  },
  {
    look: { fill: 'none', stroke: 'var(--charge)', 'stroke-width': narrow ? 1.3 : 1.8, 'stroke-linejoin': 'round' },
    course: (x, y) => `M${points(lowest, x, y).join('L')}`,
  },
];

/** Hours of engine on each day, as a stroke upwards where there are any. */
export const engineLines = (hours: readonly number[], narrow: boolean): Line[] => [
  {
    look: { fill: 'none', stroke: 'var(--engine)', 'stroke-width': narrow ? 1.6 : 2.2 },
    course: (x, y) =>
      hours.map((value, day) => (value > 0 ? `M${at(x(day + 0.5))},${at(y(0))}V${at(y(value))}` : '')).join(''),
  },
];
