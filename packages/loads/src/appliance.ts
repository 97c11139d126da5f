import type { Driver } from './driver.js';
import type { DaySpan, Schedule } from './schedule.js';

/** Which side of the inverter a load hangs on. */
export type Bus = 'ac' | 'dc';

/** Something that uses electricity. `{ name: 'freezer', powerW: 90, runs: 0.35, bus: 'ac' }` is a whole one. */
export interface Appliance extends Schedule {
  name: string;
  /** Power while it runs, W, of one. */
  powerW: number;
  /** How many of them, 1 unless given. */
  count?: number;
  bus: Bus;
  /** Power while it does not run, W, of one, at all times of the year. */
  standbyW?: number;
  /** The most one of them draws while starting: as a power, or as a multiple of `powerW`. */
  surge?: { powerW: number } | { factor: number };
  /** Days on which it is unplugged: it neither runs nor draws standby. */
  off?: readonly DaySpan[];
  /** What else decides how long it runs. */
  drivenBy?: Driver;
}

/** Power of one unit while starting, W; its running power when it has no surge. */
export function surgePowerW({ powerW, surge }: Appliance): number {
  if (!surge) return powerW;
  return 'powerW' in surge ? surge.powerW : surge.factor * powerW;
}
