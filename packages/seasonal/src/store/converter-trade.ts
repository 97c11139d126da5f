import { createFlows, fillFlows } from './hourly-flows.js';
import type { StoreTechnology } from './seasonal-store.js';
import { smallestCapacity, unmetInSettledYear } from './smallest-capacity.js';

/** One converter-in power and the smallest store that goes with it: a smaller converter asks for a larger store. */
export interface TradePoint {
  converterInW: number;
  capacityWh: number;
  /** Largest hour of need, standby included, W. */
  converterOutW: number;
}

/** What trying many converter-in powers showed. */
export type ConverterTrade =
  | {
      closes: true;
      /** From the smallest converter in to the smallest store; nothing in it is beaten on both counts. */
      points: readonly TradePoint[];
    }
  | {
      closes: false;
      /** The converter in, and a store without limit behind it, that leave least unmet. */
      best: TradePoint;
    };

const ladderSteps = 24;
// The ladder starts no lower than this share of its top; bisection may still go below.
const leastShare = 1e-3;
const bisectionSteps = 20;

/**
 * Tries a ladder of converter-in powers between two ends, finds the smallest store of each, and bisects between the
 * last power that does not cover the year and the first that does. A ladder and not bisection alone, because with a
 * minimum load more power can take less: a large converter leaves the thin hours.
 *
 * @param leastW a power that is surely too small, or just enough, W; above 0
 * @param mostW the largest hour of surplus, W
 * @param allowedWh need that may stay unmet, Wh at the bus
 */
export function tryConverters(
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  technology: StoreTechnology,
  leastW: number,
  mostW: number,
  allowedWh: number,
): ConverterTrade {
  const flows = createFlows(surplusWh.length);
  const efficiencyOut = technology.converterOut.efficiency;
  const lossPerH = technology.standingLossPerH;
  const converterIn = { ...technology.converterIn, powerW: 0 };
  const converterOut = { ...technology.converterOut, powerW: Number.POSITIVE_INFINITY };
  const fill = (powerW: number): void => {
    converterIn.powerW = powerW;
    fillFlows(flows, surplusWh, demandWh, converterIn, converterOut);
  };
  const pointAt = (powerW: number): TradePoint | null => {
    fill(powerW);
    const capacityWh = smallestCapacity(flows, efficiencyOut, lossPerH, allowedWh);
    return capacityWh === null
      ? null
      : { converterInW: powerW, capacityWh, converterOutW: sumAndPeak(flows.needWh).peak };
  };

  const rungs = ladderOf(leastW, mostW);
  const closing: TradePoint[] = [];
  let belowW = 0;
  for (const powerW of rungs) {
    const point = pointAt(powerW);
    if (point) closing.push(point);
    else if (closing.length === 0) belowW = powerW;
  }
  if (closing.length === 0) return { closes: false, best: leastUnmet() };

  let smallest = closing[0]!;
  for (let step = 0; step < bisectionSteps && smallest.converterInW - belowW > 1e-4 * smallest.converterInW; step++) {
    const middleW = (belowW + smallest.converterInW) / 2;
    const point = pointAt(middleW);
    if (point) smallest = point;
    else belowW = middleW;
  }
  if (smallest !== closing[0]) closing.unshift(smallest);
  return { closes: true, points: unbeaten(closing) };

  function leastUnmet(): TradePoint {
    let least = Number.POSITIVE_INFINITY;
    let best: TradePoint = { converterInW: 0, capacityWh: 0, converterOutW: 0 };
    for (const powerW of rungs) {
      fill(powerW);
      const capacityWh = sumAndPeak(flows.supplyWh).sum;
      const unmet = unmetInSettledYear(flows, efficiencyOut, capacityWh, lossPerH);
      if (unmet < least) {
        least = unmet;
        best = { converterInW: powerW, capacityWh, converterOutW: sumAndPeak(flows.needWh).peak };
      }
    }
    return best;
  }
}

/** Converter-in powers to try, W, each larger than the last by the same factor. */
function ladderOf(leastW: number, mostW: number): number[] {
  const from = Math.min(mostW, Math.max(leastW, mostW * leastShare));
  if (!(from < mostW)) return [mostW];
  return Array.from({ length: ladderSteps + 1 }, (_, step) => from * (mostW / from) ** (step / ladderSteps));
}

/** Points in order of power, without those that a smaller converter matches with as small a store. */
function unbeaten(points: readonly TradePoint[]): TradePoint[] {
  const kept: TradePoint[] = [];
  for (const point of points) {
    const before = kept[kept.length - 1];
    if (!before || point.capacityWh < before.capacityWh * (1 - 1e-9)) kept.push(point);
  }
  return kept;
}

/** Sum of a year and its largest hour. */
export function sumAndPeak(amounts: ArrayLike<number>): { sum: number; peak: number } {
  let sum = 0;
  let peak = 0;
  for (let h = 0; h < amounts.length; h++) {
    sum += amounts[h]!;
    peak = Math.max(peak, amounts[h]!);
  }
  return { sum, peak };
}
