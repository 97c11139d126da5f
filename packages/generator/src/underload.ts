import { hoursPerYear, mustHold } from '@wintergap/ground';
import type { CompiledGenerator } from './compile-generator.js';
import type { FuelKind } from './fuels.js';

export interface Underload {
  /** Engine hours in hours of the year whose mean output while running was below the minimum load. */
  hours: number;
  /** Their share of all engine hours, 0 when there were none. */
  share: number;
}

/**
 * How long the engine ran with too little to do. The output is the mean over the time the engine ran in that hour,
 * so the slow end of an absorption charge shows and a short run at full power does not count as light.
 *
 * @param outputWh energy the set gave in each hour, measured like `generator.ratedW`
 * @param engineH engine time in each hour, h
 */
export function underload(outputWh: Float64Array, engineH: Float64Array, generator: CompiledGenerator): Underload {
  mustHold('outputWh', outputWh, hoursPerYear, 0, 1e12);
  mustHold('engineH', engineH, hoursPerYear, 0, 1 + 1e-9);
  let hours = 0;
  let all = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const ran = engineH[h]!;
    all += ran;
    if (ran > 0 && outputWh[h]! < generator.minimumLoadW * ran) hours += ran;
  }
  return { hours, share: all > 0 ? hours / all : 0 };
}

/**
 * A caution about light running, or `null` when there is no need for one. A diesel that idles along stays too cold to
 * burn its fuel: it washes past the rings and wets the exhaust. Common practice, no source: keep it above 30 % load,
 * let it run lighter for less than a fifth of the time.
 */
export function wetRunningCaution(use: Underload, kind: FuelKind): string | null {
  if (kind !== 'diesel' || use.share <= 0.2) return null;
  return (
    `the diesel runs below its minimum load for ${Math.round(use.hours)} h, ${Math.round(use.share * 100)} % of its ` +
    'time: unburnt fuel wets cylinders and exhaust; use a smaller set or a larger charger, or stop at the end of bulk'
  );
}
