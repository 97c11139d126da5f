import type { HourlyFlows } from './hourly-flows.js';
import { sequentPeakWithLoss } from './sequent-peak.js';
import { settledContent } from './settled-content.js';

// Every step halves the bracket: 40 leave a trillionth of it.
const bisectionSteps = 40;

/** Need left unmet in the settled year of a store of a given capacity, Wh at the bus. No allocation. */
export function unmetInSettledYear(
  flows: HourlyFlows,
  efficiencyOut: number,
  capacityWh: number,
  lossPerH: number,
): number {
  const { supplyWh, drawWh, needWh } = flows;
  let stored = settledContent(supplyWh, drawWh, capacityWh, lossPerH, capacityWh);
  let unmet = 0;
  for (let h = 0; h < supplyWh.length; h++) {
    const kept = stored * (1 - lossPerH);
    const drawn = Math.min(drawWh[h]!, kept + supplyWh[h]!);
    unmet += Math.max(0, needWh[h]! - drawn * efficiencyOut);
    stored = Math.min(capacityWh, Math.max(0, kept + supplyWh[h]! - drawn));
  }
  return unmet;
}

/**
 * Smallest capacity that leaves at most `allowedWh` unmet in the settled year, Wh at the store; `null` when no
 * capacity does. The sequent peak with standing loss answers directly for nothing unmet; with something allowed, the
 * hourly year is bisected below that, since a larger store never leaves more unmet.
 */
export function smallestCapacity(
  flows: HourlyFlows,
  efficiencyOut: number,
  lossPerH: number,
  allowedWh: number,
): number | null {
  const peak = sequentPeakWithLoss(flows.supplyWh, flows.drawWh, lossPerH);
  // A store that does not cover the year runs empty within a year, so no store ever holds more than a year's supply.
  let high = peak.closes ? peak.storeSize : sum(flows.supplyWh);
  if (unmetInSettledYear(flows, efficiencyOut, high, lossPerH) > allowedWh) {
    if (!peak.closes) return null;
    high *= 1 + 1e-9;
    if (unmetInSettledYear(flows, efficiencyOut, high, lossPerH) > allowedWh) return null;
  }
  let low = 0;
  if (unmetInSettledYear(flows, efficiencyOut, low, lossPerH) <= allowedWh) return 0;
  if (peak.closes && allowedWh <= roundingShare * sum(flows.needWh)) return high;
  for (let step = 0; step < bisectionSteps; step++) {
    const middle = (low + high) / 2;
    if (unmetInSettledYear(flows, efficiencyOut, middle, lossPerH) <= allowedWh) high = middle;
    else low = middle;
  }
  return high;
}

/** Share of a year's need that counts as rounding, not as unmet. */
export const roundingShare = 1e-9;

function sum(amounts: ArrayLike<number>): number {
  let total = 0;
  for (let h = 0; h < amounts.length; h++) total += amounts[h]!;
  return total;
}
