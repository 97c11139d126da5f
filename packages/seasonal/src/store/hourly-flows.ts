import type { StoreConverter } from './seasonal-store.js';

/**
 * What each hour offers the store and asks of it, before the content decides how much of it happens.
 * Made once for a year and filled again for every converter size tried.
 */
export interface HourlyFlows {
  /** Surplus converter in would turn into content, Wh at the bus: within its power, nothing below its minimum load. */
  offeredWh: Float64Array;
  /** What that puts in the store, Wh at the store. */
  supplyWh: Float64Array;
  /** Standby draw of both converters, Wh at the bus, and the part of it that surplus answers directly. */
  standbyWh: Float64Array;
  standbyFromSurplusWh: Float64Array;
  /** Demand and the standby that surplus does not answer, Wh at the bus. */
  needWh: Float64Array;
  /** The part of the need within converter out's power, Wh at the store. */
  drawWh: Float64Array;
}

export function createFlows(hours: number): HourlyFlows {
  return {
    offeredWh: new Float64Array(hours),
    supplyWh: new Float64Array(hours),
    standbyWh: new Float64Array(hours),
    standbyFromSurplusWh: new Float64Array(hours),
    needWh: new Float64Array(hours),
    drawWh: new Float64Array(hours),
  };
}

/**
 * Fills the hourly flows. No allocation.
 *
 * Converter out draws its standby in hours without demand; converter in in hours whose surplus is too small to run it.
 * Standby is met by the hour's surplus first, else it adds to the need. Surplus below the minimum load is not taken:
 * the bank is full then and cannot buffer. Demand below converter out's minimum load is met by running part of the
 * hour, the bank carrying the bus between.
 */
export function fillFlows(
  flows: HourlyFlows,
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  converterIn: StoreConverter,
  converterOut: StoreConverter,
): void {
  const { offeredWh, supplyWh, standbyWh, standbyFromSurplusWh, needWh, drawWh } = flows;
  const { efficiency: efficiencyIn, powerW: inW, standbyW: standbyInW } = converterIn;
  const { efficiency: efficiencyOut, powerW: outW, standbyW: standbyOutW } = converterOut;
  const leastW = inW * converterIn.minimumLoad;
  for (let h = 0; h < offeredWh.length; h++) {
    const surplus = surplusWh[h]!;
    const demand = demandWh[h]!;
    let standby = demand > 0 ? 0 : standbyOutW;
    let fromSurplus = Math.min(surplus, standby);
    const free = surplus - fromSurplus;
    let offered = Math.min(free, inW);
    if (offered < leastW || offered <= 0) {
      offered = 0;
      standby += standbyInW;
      fromSurplus += Math.min(free, standbyInW);
    }
    const need = demand + (standby - fromSurplus);
    offeredWh[h] = offered;
    supplyWh[h] = offered * efficiencyIn;
    standbyWh[h] = standby;
    standbyFromSurplusWh[h] = fromSurplus;
    needWh[h] = need;
    drawWh[h] = Math.min(need, outW) / efficiencyOut;
  }
}
