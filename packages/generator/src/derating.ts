import { hoursPerYear, mustHold, mustLie } from '@wintergap/ground';

/** How an air-breathing engine weakens with height and heat. */
export type Derating =
  | { kind: 'none' }
  /** Shares of the rating lost per metre above `freeM` and per kelvin above `freeC`. */
  | { kind: 'linear'; freeM: number; perM: number; freeC: number; perK: number };

/** About 3.5 % per 300 m above 150 m and 1 % per 5.5 K above 25 degC. Common practice, no source. */
export const commonDerating: Derating = { kind: 'linear', freeM: 150, perM: 0.035 / 300, freeC: 25, perK: 0.01 / 5.5 };

/** Share of the rating that the engine can give; never above 1, and not below 0. */
export function deratedShare(derating: Derating, elevationM: number, airC: number): number {
  if (derating.kind === 'none') return 1;
  const byHeight = 1 - derating.perM * Math.max(elevationM - derating.freeM, 0);
  const byHeat = 1 - derating.perK * Math.max(airC - derating.freeC, 0);
  return Math.max(byHeight, 0) * Math.max(byHeat, 0);
}

/** The set's rating at the test bench, and how it weakens: `commonDerating` unless given. */
interface RatedSet {
  output: { powerW: number };
  derating?: Derating;
}

/**
 * Most power the set gives in each hour, W at its own output.
 *
 * @param elevationM height of the site above the sea
 * @param airC hourly air temperature at the engine's intake
 */
export function ratedPowerYear(settings: RatedSet, elevationM: number, airC: Float64Array): Float64Array {
  const { powerW } = settings.output;
  const derating = settings.derating ?? commonDerating;
  mustLie('output.powerW', powerW, 1, 1e9);
  mustLie('elevationM', elevationM, -500, 9000);
  mustHold('airC', airC, hoursPerYear, -90, 70);
  if (derating.kind === 'linear') {
    mustLie('derating.freeM', derating.freeM, -500, 9000);
    mustLie('derating.perM', derating.perM, 0, 1);
    mustLie('derating.freeC', derating.freeC, -100, 100);
    mustLie('derating.perK', derating.perK, 0, 1);
  }
  const ratedW = new Float64Array(hoursPerYear);
  for (let h = 0; h < hoursPerYear; h++) ratedW[h] = powerW * deratedShare(derating, elevationM, airC[h]!);
  return ratedW;
}
