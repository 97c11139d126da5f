import type { Sun } from './sun.js';

/** Something that uses electricity. */
export interface Appliance {
  bus: 'ac' | 'dc';
  powerW: number;
  standbyW: number;
  count: number;
  /** Share of the allowed time, or hours a day spread over it. */
  runs: { share: number } | { hoursPerDay: number };
  /** Hours of day, `[22, 6]` past midnight. */
  hours: readonly (readonly [number, number])[];
  days: 'all' | 'weekdays' | 'weekends';
  /** Days of the year, both included, 0 is 1 January; all when empty. */
  season: readonly { fromDay: number; toDay: number }[];
  /** While the sun is down; or in the cold, all the time at `fullC` and below, not at all from `belowC` on. */
  only: 'always' | 'dark' | { belowC: number; fullC: number | null };
}

/** Mean load of each hour on both buses, W. */
export function hourlyLoads(
  appliances: readonly Appliance[],
  sun: Sun,
  airC: Float64Array,
  calendarYear: number,
): { acW: Float64Array; dcW: Float64Array } {
  const acW = new Float64Array(8760);
  const dcW = new Float64Array(8760);
  const newYear = new Date(Date.UTC(calendarYear, 0, 1)).getUTCDay();
  const dark = new Float64Array(8760);
  for (let m = 0; m < sun.cosZenith.length; m++) if (sun.cosZenith[m] === 0) dark[Math.floor(m / 60)]! += 1 / 60;
  for (const appliance of appliances) {
    const share = new Float64Array(8760);
    const allowedH = appliance.hours.reduce((sum, [from, to]) => sum + (to > from ? to - from : to + 24 - from), 0);
    const running = 'share' in appliance.runs ? appliance.runs.share : appliance.runs.hoursPerDay / allowedH;
    for (let day = 0; day < 365; day++) {
      const weekday = (newYear + day) % 7;
      const isWeekend = weekday === 0 || weekday === 6;
      if (appliance.days !== 'all' && isWeekend !== (appliance.days === 'weekends')) continue;
      if (appliance.season.length > 0 && !appliance.season.some((span) => lies(day, span))) continue;
      for (const [from, to] of appliance.hours) {
        const end = to > from ? to : to + 24;
        for (let hour = Math.floor(from); hour < end; hour++) {
          const part = Math.min(hour + 1, end) - Math.max(hour, from);
          share[(day * 24 + hour) % 8760]! += part * running;
        }
      }
    }
    const onBus = appliance.bus === 'ac' ? acW : dcW;
    for (let h = 0; h < 8760; h++) {
      let runs = Math.min(1, share[h]!);
      if (appliance.only === 'dark') runs *= dark[h]!;
      else if (appliance.only !== 'always') runs *= inTheCold(airC[h]!, appliance.only);
      onBus[h]! += appliance.count * (appliance.powerW * runs + appliance.standbyW * (1 - runs));
    }
  }
  return { acW, dcW };
}

const lies = (day: number, { fromDay, toDay }: { fromDay: number; toDay: number }): boolean =>
  fromDay <= toDay ? day >= fromDay && day <= toDay : day >= fromDay || day <= toDay;

function inTheCold(airC: number, { belowC, fullC }: { belowC: number; fullC: number | null }): number {
  if (fullC === null) return airC < belowC ? 1 : 0;
  return Math.min(1, Math.max(0, (belowC - airC) / (belowC - fullC)));
}

/** An inverter whose loss is idle + k1 P + k2 P^2 / rating (Schmidt and Sauer 1996). */
export interface Inverter {
  ratedW: number;
  idleW: number;
  k1: number;
  k2: number;
}

/**
 * The inverter of which only rating, idle draw and best efficiency are known, the best taken at a third of the rating or,
 * where idling alone would then lose more than all, at the least load at which it does not. The loss for each watt given,
 * i/p + k1 + k2 p, is least at p = sqrt(i/k2) and is there k1 + 2 sqrt(i k2).
 */
export function inverterOf(ratedW: number, idleW: number, bestEfficiency: number): Inverter {
  const i = idleW / ratedW;
  const least = 1 / bestEfficiency - 1;
  const best = Math.min(1, Math.max(1 / 3, (2 * i) / least));
  const k2 = i / best ** 2;
  return { ratedW, idleW, k1: least - 2 * Math.sqrt(i * k2), k2 };
}

/** What an inverter draws from the bank to give a power, W. */
export const inverterDrawW = ({ ratedW, idleW, k1, k2 }: Inverter, acW: number): number =>
  acW + idleW + k1 * acW + (k2 * acW ** 2) / ratedW;
