import { daysPerYear, monthOfDay } from '@wintergap/ground';
import { bestTilt, bestTwoTilts, type TiltPeriod } from '@wintergap/year';
import type { TiltTrial, TiltTrials } from './tilt-trials.js';

/** Share by which the light of the whole year counts where the dark months decide: enough to settle what they leave open. */
const yearBesideDark = 1e-3;
const everyMonth = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];

/** One tilt all year, and two by date. */
export interface LightBest {
  one: TiltPeriod[];
  two: TiltPeriod[];
}

/** Light of tilts in the file's year, kWh/m2, and the tilts with the most. */
export interface LightSearch {
  year(tilts: readonly TiltPeriod[]): number;
  dark(tilts: readonly TiltPeriod[]): number;
  best: Record<'year' | 'dark months', LightBest>;
}

/** The tilts with the most light, one all year and two by date. */
export function lightSearch(trials: TiltTrials, darkMonths: readonly number[], latitude: number): LightSearch {
  const at = (tilts: readonly TiltPeriod[]): TiltTrial => trials.at(tilts);
  const year = (of: readonly TiltPeriod[]) => lightOn(of, at, everyMonth);
  const dark = (of: readonly TiltPeriod[]) => lightOn(of, at, darkMonths);
  const limits = { minTiltDeg: trials.limits.fromDeg, maxTiltDeg: trials.limits.toDeg };
  const best = (score: (tilts: readonly TiltPeriod[]) => number) => ({
    one: [{ fromDay: 0, tiltDeg: bestTilt((tiltDeg) => score([{ fromDay: 0, tiltDeg }]), limits).tiltDeg }],
    two: bestTwoTilts(score, latitude, limits).tilts as TiltPeriod[],
  });
  return {
    year,
    dark,
    best: {
      year: best(year),
      'dark months': best((tilts) => dark(tilts) + yearBesideDark * year(tilts)),
    },
  };
}

/** Light of some months under tilts by date, kWh/m2: each day from the single-tilt year of the tilt it has. */
export function lightOn(
  tilts: readonly TiltPeriod[],
  trialAt: (tilts: readonly TiltPeriod[]) => TiltTrial,
  months: readonly number[],
): number {
  const single = tilts.map(({ tiltDeg }) => trialAt([{ fromDay: 0, tiltDeg }]).dailyWhM2);
  let sumWh = 0;
  for (let day = 0; day < daysPerYear; day++) {
    if (months.includes(monthOfDay(day) + 1)) sumWh += single[periodOn(tilts, day)]![day]!;
  }
  return sumWh / 1000;
}

/** The period that began last; before the first date of the year that is the one that runs on through New Year. */
function periodOn(tilts: readonly TiltPeriod[], day: number): number {
  let latest = 0;
  let began = Number.NEGATIVE_INFINITY;
  tilts.forEach(({ fromDay }, i) => {
    const ago = fromDay <= day ? fromDay : fromDay - daysPerYear;
    if (ago > began) {
      began = ago;
      latest = i;
    }
  });
  return latest;
}
