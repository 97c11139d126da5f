import { type ArrayChain, arrayChain, clippedPower, controllerLosses, extendChain } from '@wintergap/array';
import { hoursPerYear } from '@wintergap/ground';
import type { PreparedArray } from '../prepare/prepare-array.js';
import type { YearResult } from '../year-result.js';

/** Where one array's energy goes, from the plane of the array to what the bus used of it. */
export interface ArrayLosses {
  name: string;
  chain: ArrayChain;
}

/** The losses that follow the module chain, in the order in which they bite. */
const afterArray = [
  'off the best voltage',
  'conversion',
  'voltage in the hour',
  'current limit',
  'above the limit, bank full',
  'throttled',
] as const;

/**
 * The chain of each array of a settled year, down to the energy the ledger counts as used: the rests of all arrays
 * together are the ledger's `arrayUsedWh`, month by month.
 *
 * The controller's losses are worked out at the bank's mean voltage of each hour. What a direct connection, an array
 * held at bank voltage or a controller with an efficiency curve offers at the voltages within the hour differs from
 * that a little: the difference has its own line, `voltage in the hour`, shared among those arrays by what each offered.
 *
 * What is above a current limit is divided into what load or bank would have taken, and what would have been refused.
 *
 * The ledger knows the current limit's and the full bank's toll of all arrays together. The first is shared by how far
 * each array is above its own limit at the hour's mean voltage, the second by what each offered in that hour.
 */
export function arrayLosses({ arrays, ledger }: YearResult): ArrayLosses[] {
  const { arrayAvailableWh, clippedWh, spareWh, throttledWh, bankV } = ledger;
  const toBus = arrays.map(({ controller }) => controllerLosses(controller, bankV));
  const follows = arrays.map(followsVoltage);
  const anyFollows = follows.includes(true);
  const voltageWh = arrays.map(() => new Float64Array(hoursPerYear));
  const limitWh = arrays.map(() => new Float64Array(hoursPerYear));
  const spareOfWh = arrays.map(() => new Float64Array(hoursPerYear));
  const fullWh = arrays.map(() => new Float64Array(hoursPerYear));
  const offerW = new Float64Array(arrays.length);
  const weight = new Float64Array(arrays.length);
  for (let h = 0; h < hoursPerYear; h++) {
    let beyond = -arrayAvailableWh[h]! - clippedWh[h]! - spareWh[h]!;
    for (let i = 0; i < arrays.length; i++) {
      offerW[i] = toBus[i]!.busW[h]!;
      beyond += offerW[i]!;
      weight[i] = !anyFollows || follows[i] ? offerW[i]! : 0;
    }
    share(beyond, weight, voltageWh, h);
    for (let i = 0; i < arrays.length; i++) {
      offerW[i]! -= voltageWh[i]![h]!;
      weight[i] = offerW[i]! - clippedPower(offerW[i]!, bankV[h]!, arrays[i]!.maxCurrentA);
    }
    // Above the limit for part of the hour only, and not at its mean voltage: by what each offers.
    const above = weight.some((aboveW) => aboveW > 0) ? weight : offerW;
    share(clippedWh[h]!, above, limitWh, h);
    share(spareWh[h]!, above, spareOfWh, h);
    for (let i = 0; i < arrays.length; i++) offerW[i]! -= limitWh[i]![h]! + spareOfWh[i]![h]!;
    share(throttledWh[h]!, offerW, fullWh, h);
  }
  return arrays.map(({ name, input, dc, plane }, i) => {
    const lossesWh = [
      toBus[i]!.heldAwayW,
      toBus[i]!.conversionW,
      voltageWh[i]!,
      limitWh[i]!,
      spareOfWh[i]!,
      fullWh[i]!,
    ];
    const chain = lossesWh.reduce(
      (before, lossWh, k) => extendChain(before, afterArray[k]!, lossWh),
      arrayChain(input, dc, plane),
    );
    return { name, chain };
  });
}

/** Whether what an array offers depends on the bank's voltage. */
const followsVoltage = ({ controller }: PreparedArray) => controller.grid !== null || controller.efficiency.length > 1;

/** Divides `total` of hour h in proportion to the weights; in equal parts where all are zero. */
function share(total: number, weight: Float64Array, parts: readonly Float64Array[], h: number): void {
  let sum = 0;
  for (let i = 0; i < weight.length; i++) sum += weight[i]!;
  for (let i = 0; i < weight.length; i++) parts[i]![h] = total * (sum > 0 ? weight[i]! / sum : 1 / weight.length);
}
