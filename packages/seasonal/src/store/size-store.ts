import { mustLie } from '@wintergap/ground';
import { checkSeries } from '../check-input.js';
import { sumAndPeak, type TradePoint, tryConverters } from './converter-trade.js';
import { runStore, type StoreYear } from './run-store.js';
import {
  checkTechnology,
  roundTripEfficiency,
  type SeasonalStore,
  type StoreTechnology,
  sizedStore,
} from './seasonal-store.js';
import { sequentPeak } from './sequent-peak.js';
import { roundingShare } from './smallest-capacity.js';

interface Balance {
  /** Surplus and demand of the year, Wh at the bus. */
  surplusWh: number;
  demandWh: number;
  /** Electricity back per electricity put in, standing loss and standby aside. */
  roundTrip: number;
  /** The settled year of `store`. */
  year: StoreYear;
}

/** Whether a store retires the engine, and with what sizes. */
export type StoreSize = Balance &
  (
    | {
        closes: true;
        /** The smallest store that covers the year, with the converter in that allows it. */
        store: SeasonalStore;
        /** The smallest converter in that covers the year, with the larger store it needs. */
        smallestConverterIn: SeasonalStore;
        /** Everything between the two, by converter-in power; empty when there is no demand. */
        trade: readonly TradePoint[];
        /** Store size if every watt-hour of surplus were taken and nothing leaked; `null` when that does not close. */
        losslessWh: number | null;
      }
    | {
        closes: false;
        /** The store that brings most, with the capacity it can fill. */
        store: SeasonalStore;
        /** Most of the demand that it can bring, Wh at the bus. */
        bringsWh: number;
        /** Demand, and standby of the store itself, that stay open, Wh at the bus. */
        shortWh: number;
      }
  );

/**
 * Sizes a seasonal store that retires the engine: converter in, store and converter out.
 *
 * Converter out is sized by the largest hour of need. Give `dailyMeanDemand(demandWh)` instead of the hourly demand to
 * let the bank carry the peaks of the day. For converter in, a ladder of powers is tried, from the least that could
 * carry the demand if it ran all year to the largest hour of surplus; the store that goes with each follows from the
 * sequent peak with standing loss and is confirmed by the hourly year.
 *
 * @param surplusWh array energy that bank and load could not take, per hour, Wh on the DC bus
 * @param demandWh energy the engine gave or nothing met, per hour, Wh on the DC bus; same length
 * @param unmetAllowed share of the demand that may stay unmet, 0 to 1
 * @throws OutOfRangeError for an input out of range
 */
export function sizeStore(
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  technology: StoreTechnology,
  unmetAllowed: number,
): StoreSize {
  checkSeries('surplusWh', surplusWh, 'demandWh', demandWh);
  checkTechnology(technology);
  mustLie('unmetAllowed', unmetAllowed, 0, 1);
  const roundTrip = roundTripEfficiency(technology);
  const surplus = sumAndPeak(surplusWh);
  const demand = sumAndPeak(demandWh);
  const balance = { surplusWh: surplus.sum, demandWh: demand.sum, roundTrip };
  if (demand.sum <= 0) {
    const idle = { ...technology, converterIn: switchedOff, converterOut: switchedOff };
    const store = sizedStore(idle, 0, 0, 0);
    const year = runStore(surplusWh, demandWh, store, 0);
    return { ...balance, year, closes: true, store, smallestConverterIn: store, trade: [], losslessWh: 0 };
  }

  const allowedWh = Math.max(unmetAllowed, roundingShare) * demand.sum;
  const leastW = ((1 - unmetAllowed) * demand.sum) / (roundTrip * surplusWh.length);
  const trial = tryConverters(surplusWh, demandWh, technology, leastW, surplus.peak, allowedWh);
  if (!trial.closes) {
    const { converterInW, capacityWh, converterOutW } = trial.best;
    const ample = sizedStore(technology, converterInW, capacityWh, converterOutW);
    const { totals } = runStore(surplusWh, demandWh, ample, 0);
    const store = sizedStore(technology, converterInW, totals.fullestWh, converterOutW);
    const year = runStore(surplusWh, demandWh, store, 0);
    const shortWh = year.totals.unmetWh;
    return { ...balance, year, closes: false, store, bringsWh: Math.max(0, demand.sum - shortWh), shortWh };
  }
  const storeAt = (point: TradePoint): SeasonalStore =>
    sizedStore(technology, point.converterInW, point.capacityWh, point.converterOutW);
  const store = storeAt(trial.points[trial.points.length - 1]!);
  return {
    ...balance,
    year: runStore(surplusWh, demandWh, store, 0),
    closes: true,
    store,
    smallestConverterIn: storeAt(trial.points[0]!),
    trade: trial.points,
    losslessWh: losslessSize(surplusWh, demandWh, technology),
  };
}

const switchedOff = { efficiency: 1, minimumLoad: 0, standbyW: 0 };

function losslessSize(
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  technology: StoreTechnology,
): number | null {
  const { converterIn, converterOut } = technology;
  const supply = Float64Array.from(surplusWh, (wh) => wh * converterIn.efficiency);
  const draw = Float64Array.from(demandWh, (wh) => wh / converterOut.efficiency);
  const peak = sequentPeak(supply, draw);
  return peak.closes ? peak.storeSize : null;
}
