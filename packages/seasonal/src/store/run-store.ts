import { mustLie } from '@wintergap/ground';
import { checkSeries } from '../check-input.js';
import { createFlows, fillFlows, type HourlyFlows } from './hourly-flows.js';
import { checkStore, type SeasonalStore } from './seasonal-store.js';
import { settledContent } from './settled-content.js';

/**
 * The settled year of a seasonal store, hour by hour. Every hour closes as
 * surplus + unmet = demand + standby + spilled + losses + change of content.
 */
export interface StoreYear {
  /** Content at the end of each hour, Wh at the store. */
  storedWh: Float64Array;
  /** Surplus that converter in took, Wh at the bus. */
  takenWh: Float64Array;
  /** What converter out gave, Wh at the bus. */
  givenWh: Float64Array;
  /** Demand and standby that nothing answered: the engine's, or dark. Wh at the bus. */
  unmetWh: Float64Array;
  /** Surplus left over, Wh at the bus. */
  spilledWh: Float64Array;
  /** Content at the start and, settled, at the end of the year, Wh at the store. */
  startWh: number;
  totals: StoreTotals;
}

/** Sums of one settled year. */
export interface StoreTotals {
  surplusWh: number;
  demandWh: number;
  takenWh: number;
  givenWh: number;
  unmetWh: number;
  spilledWh: number;
  /** Draw of idle converters, Wh at the bus. */
  standbyWh: number;
  converterInLossWh: number;
  standingLossWh: number;
  converterOutLossWh: number;
  /** Largest and smallest content, Wh at the store, and the first hour that ends with each. */
  fullestWh: number;
  fullestHour: number;
  emptiestWh: number;
  emptiestHour: number;
  /** Hours that each converter ran, parts of hours as parts. */
  converterInHours: number;
  converterOutHours: number;
  /** Hours in which something stayed unmet. */
  unmetHours: number;
  /** What was drawn from the store over its capacity; about 1 for a purely seasonal store. */
  turnsPerYear: number;
}

/**
 * Runs a seasonal store through hourly surplus and demand. Within an hour, what comes in and what goes out offset each
 * other before the store's limits act. The year is the settled one: it ends with the content it began with.
 *
 * @param surplusWh array energy that bank and load could not take, per hour, Wh on the DC bus
 * @param demandWh energy the engine gave or nothing met, per hour, Wh on the DC bus; same length
 * @param startWh first guess of the content at the start, Wh at the store; it only shows where every start is settled
 * @throws OutOfRangeError for an input out of range
 */
export function runStore(
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  store: SeasonalStore,
  startWh: number,
): StoreYear {
  checkSeries('surplusWh', surplusWh, 'demandWh', demandWh);
  checkStore(store);
  mustLie('startWh', startWh, 0, store.store.capacityWh);
  const hours = surplusWh.length;
  const flows = createFlows(hours);
  fillFlows(flows, surplusWh, demandWh, store.converterIn, store.converterOut);
  const { capacityWh, standingLossPerH } = store.store;
  const settledWh = settledContent(flows.supplyWh, flows.drawWh, capacityWh, standingLossPerH, startWh);
  const year = march(surplusWh, demandWh, flows, store, settledWh);
  const endWh = year.storedWh[hours - 1]!;
  const scale = Math.max(year.totals.surplusWh, year.totals.demandWh, capacityWh);
  if (!(Math.abs(endWh - settledWh) <= closingTolerance * scale)) {
    throw new Error(`the store does not settle: it starts with ${settledWh} Wh and ends with ${endWh} Wh`);
  }
  return year;
}

/** Imbalance of an hour, relative to its throughput, above which the run is refused. */
const closingTolerance = 1e-9;

/** Rounding of the difference of two contents, relative to them: about 45 units in the last place. */
const storedRounding = 1e-14;

function march(
  surplusWh: ArrayLike<number>,
  demandWh: ArrayLike<number>,
  flows: HourlyFlows,
  store: SeasonalStore,
  startWh: number,
): StoreYear {
  const hours = surplusWh.length;
  const storedWh = new Float64Array(hours);
  const takenWh = new Float64Array(hours);
  const givenWh = new Float64Array(hours);
  const unmetWh = new Float64Array(hours);
  const spilledWh = new Float64Array(hours);
  const { offeredWh, supplyWh, standbyWh, standbyFromSurplusWh, needWh, drawWh } = flows;
  const { capacityWh, standingLossPerH } = store.store;
  const efficiencyIn = store.converterIn.efficiency;
  const efficiencyOut = store.converterOut.efficiency;
  const leastOutWh = store.converterOut.powerW * store.converterOut.minimumLoad;
  const totals = emptyTotals(startWh);
  let stored = startWh;
  for (let h = 0; h < hours; h++) {
    const standingLoss = stored * standingLossPerH;
    const kept = stored - standingLoss;
    const drawn = Math.min(drawWh[h]!, kept + supplyWh[h]!);
    const put = Math.min(supplyWh[h]!, capacityWh - kept + drawn);
    const next = Math.min(capacityWh, Math.max(0, kept + put - drawn));
    const taken = put === supplyWh[h]! ? offeredWh[h]! : put / efficiencyIn;
    const given = drawn * efficiencyOut;
    const unmet = Math.max(0, needWh[h]! - given);
    const spilled = Math.max(0, surplusWh[h]! - standbyFromSurplusWh[h]! - taken);
    const inLoss = taken - put;
    const outLoss = drawn - given;
    const into = surplusWh[h]! + unmet;
    const outOf = demandWh[h]! + standbyWh[h]! + spilled + inLoss + outLoss + standingLoss;
    mustClose(h, into, outOf, stored, next);
    stored = next;
    storedWh[h] = stored;
    takenWh[h] = taken;
    givenWh[h] = given;
    unmetWh[h] = unmet;
    spilledWh[h] = spilled;
    totals.surplusWh += surplusWh[h]!;
    totals.demandWh += demandWh[h]!;
    totals.takenWh += taken;
    totals.givenWh += given;
    totals.unmetWh += unmet;
    totals.spilledWh += spilled;
    totals.standbyWh += standbyWh[h]!;
    totals.converterInLossWh += inLoss;
    totals.standingLossWh += standingLoss;
    totals.converterOutLossWh += outLoss;
    if (taken > 0) totals.converterInHours += taken / offeredWh[h]!;
    if (given > 0) totals.converterOutHours += given / Math.max(drawWh[h]! * efficiencyOut, leastOutWh);
    // Rounding of the efficiencies leaves parts of a trillionth unmet.
    if (unmet > 1e-9 * needWh[h]!) totals.unmetHours++;
    noteExtremes(totals, stored, h);
  }
  const drawnWh = totals.givenWh + totals.converterOutLossWh;
  totals.turnsPerYear = capacityWh > 0 ? drawnWh / capacityWh : 0;
  return { storedWh, takenWh, givenWh, unmetWh, spilledWh, startWh, totals };
}

function mustClose(h: number, into: number, outOf: number, before: number, after: number): void {
  const imbalance = into - outOf - (after - before);
  if (Math.abs(imbalance) <= closingTolerance * (into + outOf) + storedRounding * Math.max(before, after)) return;
  throw new Error(`the store's ledger does not close in hour ${h}: ${imbalance} Wh are missing`);
}

function noteExtremes(totals: StoreTotals, stored: number, h: number): void {
  if (stored > totals.fullestWh || h === 0) {
    totals.fullestWh = stored;
    totals.fullestHour = h;
  }
  if (stored < totals.emptiestWh || h === 0) {
    totals.emptiestWh = stored;
    totals.emptiestHour = h;
  }
}

const emptyTotals = (startWh: number): StoreTotals => ({
  surplusWh: 0,
  demandWh: 0,
  takenWh: 0,
  givenWh: 0,
  unmetWh: 0,
  spilledWh: 0,
  standbyWh: 0,
  converterInLossWh: 0,
  standingLossWh: 0,
  converterOutLossWh: 0,
  fullestWh: startWh,
  fullestHour: 0,
  emptiestWh: startWh,
  emptiestHour: 0,
  converterInHours: 0,
  converterOutHours: 0,
  unmetHours: 0,
  turnsPerYear: 0,
});
