import { hoursPerYear, monthOfHour, mustHold, mustLie, OutOfRangeError } from '@wintergap/ground';
import { type Appliance, type Bus, surgePowerW } from './appliance.js';
import { drive, type LoadContext } from './driver.js';
import { addEvent, type LoadEvent } from './load-event.js';
import type { MeasuredLoad } from './load-table.js';
import { checkSpans, isWithinSpans, scheduledShare } from './schedule.js';

/** What one appliance, event or measured table adds to the year. */
export interface LoadItem {
  name: string;
  bus: Bus;
  /** All it uses, standby included. */
  energyWhYear: number;
  /** What it uses in each month, January first. */
  monthsWh: Float64Array;
  /** The part of `energyWhYear` used while not running. */
  standbyWhYear: number;
}

/** The worst moment for an inverter: an appliance starting while the others run. */
export interface LargestSurge {
  powerW: number;
  hour: number;
  name: string;
}

/** A year's load on both buses, before inverter and converter. */
export interface LoadYear {
  /** Mean power of each hour, W. */
  acW: Float64Array;
  dcW: Float64Array;
  items: LoadItem[];
  /** The largest starting power on top of the mean running AC load of its hour; `null` without AC appliances. */
  largestSurge: LargestSurge | null;
  /** The same as a number, W; 0 without AC appliances. */
  largestSurgeW: number;
  /** AC power if all that may run within one hour runs at once, the largest of the year, W. */
  coincidentAcW: number;
}

/** Month of every hour, 0 for January. */
const monthOf = Uint8Array.from({ length: hoursPerYear }, (_, h) => monthOfHour(h));

/**
 * The hourly load of a year from appliances, events and measured tables.
 *
 * An appliance that runs a share of its allowed hours counts with its mean power in each of them. Standby is drawn
 * for the rest of the time, all year. A measured table brings no motor starts of its own, but counts among what runs
 * while something starts.
 *
 * @throws OutOfRangeError or TypeError, naming the appliance, when something is out of range or missing
 */
export function loadYear(
  appliances: readonly Appliance[],
  events: readonly LoadEvent[],
  context: LoadContext,
  measured: readonly MeasuredLoad[] = [],
): LoadYear {
  mustHold('airC', context.airC, hoursPerYear, -90, 70);
  mustHold('upShare', context.upShare, hoursPerYear, 0, 1);
  if (context.roomC) mustHold('roomC', context.roomC, hoursPerYear, -60, 80);
  const sums: HourlySums = {
    acW: new Float64Array(hoursPerYear),
    dcW: new Float64Array(hoursPerYear),
    coincidentW: new Float64Array(hoursPerYear),
    surgeW: new Float64Array(hoursPerYear),
    surgeOf: new Int32Array(hoursPerYear).fill(-1),
  };
  const { acW, dcW, coincidentW } = sums;
  const items = appliances.map((appliance, index) => addAppliance(sums, appliance, index, context));
  for (const event of events) {
    const eventW = new Float64Array(hoursPerYear);
    addEvent(eventW, event, context.dullSpellDay);
    items.push(itemOf(event.name, event.bus, eventW));
    add(eventW, event.bus === 'ac' ? [acW, coincidentW] : [dcW]);
  }
  for (const table of measured) {
    if (table.acW.some((powerW) => powerW > 0)) items.push(itemOf(table.source, 'ac', table.acW));
    if (table.dcW.some((powerW) => powerW > 0)) items.push(itemOf(table.source, 'dc', table.dcW));
    add(table.acW, [acW, coincidentW]);
    add(table.dcW, [dcW]);
  }
  const largestSurge = largestOf(sums, appliances);
  const coincidentAcW = coincidentW.reduce((most, powerW) => Math.max(most, powerW), 0);
  return { acW, dcW, items, largestSurge, largestSurgeW: largestSurge?.powerW ?? 0, coincidentAcW };
}

/** What the loads of each hour come to, W. */
interface HourlySums {
  acW: Float64Array;
  dcW: Float64Array;
  /** AC power if all that may run runs at once. */
  coincidentW: Float64Array;
  /** What the largest start of the hour takes on top of the mean load, and whose it is; -1 for nobody's. */
  surgeW: Float64Array;
  surgeOf: Int32Array;
}

function addAppliance(sums: HourlySums, appliance: Appliance, index: number, context: LoadContext): LoadItem {
  checkAppliance(appliance);
  const { name, bus, powerW, count = 1, standbyW = 0, off = [] } = appliance;
  checkSpans(name, off);
  const { coincidentW, surgeW, surgeOf } = sums;
  const share = scheduledShare(name, appliance, context.firstWeekday);
  if (appliance.drivenBy) drive(name, share, appliance.drivenBy, context);
  const startW = surgePowerW(appliance);
  const onBusW = bus === 'ac' ? sums.acW : sums.dcW;
  const monthsWh = new Float64Array(12);
  const unusedW = count * standbyW;
  let energyWhYear = 0;
  let standbyWhYear = 0;
  for (let h = 0; h < hoursPerYear; h++) {
    const running = share[h]!;
    if (running === 0 && unusedW === 0) continue;
    if (off.length > 0 && isWithinSpans(Math.floor(h / 24), off)) continue;
    const idleW = unusedW * Math.max(1 - running, 0);
    const meanW = count * powerW * running + idleW;
    onBusW[h]! += meanW;
    energyWhYear += meanW;
    standbyWhYear += idleW;
    monthsWh[monthOf[h]!]! += meanW;
    if (bus === 'dc') continue;
    coincidentW[h]! += running > 0 ? count * powerW * Math.max(running, 1) : idleW;
    // One unit starts; in the mean load it is there already with its share.
    const extraW = startW - powerW * Math.min(running, 1);
    if (running > 0 && count > 0 && (extraW > surgeW[h]! || surgeOf[h]! < 0)) {
      surgeW[h] = extraW;
      surgeOf[h] = index;
    }
  }
  return { name, bus, energyWhYear, monthsWh, standbyWhYear };
}

function largestOf({ acW, surgeW, surgeOf }: HourlySums, appliances: readonly Appliance[]): LargestSurge | null {
  let largest: LargestSurge | null = null;
  for (let h = 0; h < hoursPerYear; h++) {
    const powerW = acW[h]! + surgeW[h]!;
    if (surgeOf[h]! < 0 || (largest && powerW <= largest.powerW)) continue;
    largest = { powerW, hour: h, name: appliances[surgeOf[h]!]!.name };
  }
  return largest;
}

function add(loadW: Float64Array, totals: readonly Float64Array[]): void {
  for (const totalW of totals) for (let h = 0; h < hoursPerYear; h++) totalW[h]! += loadW[h]!;
}

function itemOf(name: string, bus: Bus, loadW: Float64Array): LoadItem {
  const item: LoadItem = { name, bus, energyWhYear: 0, monthsWh: new Float64Array(12), standbyWhYear: 0 };
  for (let h = 0; h < hoursPerYear; h++) {
    item.energyWhYear += loadW[h]!;
    item.monthsWh[monthOf[h]!]! += loadW[h]!;
  }
  return item;
}

function checkAppliance(appliance: Appliance): void {
  const { name, powerW, count = 1, standbyW = 0, surge, bus } = appliance;
  mustLie(`${name}: powerW`, powerW, 0, 1e9);
  mustLie(`${name}: count`, count, 0, 1e6);
  mustLie(`${name}: standbyW`, standbyW, 0, 1e9);
  if (surge) {
    if ('powerW' in surge) mustLie(`${name}: surge powerW`, surge.powerW, powerW, 1e9);
    else mustLie(`${name}: surge factor`, surge.factor, 1, 100);
  }
  if (bus !== 'ac' && bus !== 'dc') throw new OutOfRangeError(`${name}: bus must be ac or dc, got ${bus}`);
}
