import type { AutonomyQuestion } from '@wintergap/battery';
import { monthStartHour } from '@wintergap/ground';
import { hottestChargeC } from '../loop/bus-flow.js';
import type { Plant } from '../loop/plant.js';

const decemberStart = monthStartHour[11]!;

/** Mean of an hourly series over December. */
export function decemberMean(hourly: Float64Array): number {
  let sum = 0;
  for (let h = decemberStart; h < hourly.length; h++) sum += hourly[h]!;
  return sum / (hourly.length - decemberStart);
}

/** What December asks of the bank when there is no sun: the draw on the DC bus, at December's bank temperature. */
export function decemberQuestion(plant: Plant, bankC: Float64Array): AutonomyQuestion {
  return {
    averageLoadW:
      decemberMean(plant.inverterInputW) + decemberMean(plant.converterInputW) + decemberMean(plant.ownUseW),
    tempC: Math.min(decemberMean(bankC), hottestChargeC),
  };
}
