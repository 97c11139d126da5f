import type { Ledger } from '@wintergap/tally';
import { hottestChargeC } from '../loop/bus-flow.js';
import type { Plant } from '../loop/plant.js';

/** What a bank too cold or too hot to be charged refuses in a year, and what that leaves dark. */
export interface RefusedCharge {
  /** Hours of sun that was thrown away for it, and how much, Wh. */
  hours: number;
  sunWh: number;
  /** Engine time that could not charge the bank, h. */
  engineH: number;
  /** Load that stayed dark in hours in which the bank gave nothing for it, Wh. */
  darkWh: number;
}

/** A full bank refuses sun at any temperature. */
const fullEnough = 0.95;

/** What cold costs: lithium cells take no charge at 0 degC, and their electronics cut off the discharge far below. */
export function refusedInCold(plant: Plant, ledger: Ledger): RefusedCharge {
  const { bank } = plant;
  const { noChargeAtC } = bank.traits;
  const tooCold = (bankC: number) => noChargeAtC !== null && bankC <= noChargeAtC;
  return refused(ledger, tooCold, (bankC) => bank.dischargeLimitAmps(1, bankC) <= 0);
}

/** What heat costs: chargers stop at 50 degC. */
export function refusedInHeat(ledger: Ledger): RefusedCharge {
  return refused(
    ledger,
    (bankC) => bankC >= hottestChargeC,
    () => false,
  );
}

function refused(
  { bankC, generatorH, throttledWh, stateOfCharge, darkWh }: Ledger,
  takesNone: (bankC: number) => boolean,
  givesNone: (bankC: number) => boolean,
): RefusedCharge {
  const sum: RefusedCharge = { hours: 0, sunWh: 0, engineH: 0, darkWh: 0 };
  for (let h = 0; h < bankC.length; h++) {
    // The temperature at the hour's end holds from the next hour on.
    const atStartC = bankC[h === 0 ? bankC.length - 1 : h - 1]!;
    if (givesNone(atStartC)) sum.darkWh += darkWh[h]!;
    if (!takesNone(atStartC)) continue;
    sum.engineH += generatorH[h]!;
    if (throttledWh[h] === 0 || stateOfCharge[h]! > fullEnough) continue;
    sum.hours++;
    sum.sunWh += throttledWh[h]!;
  }
  return sum;
}

/** Warm enough that lithium cells take their whole charging current. */
const keepAboveC = 5;

/** Heat that holds a bank warm enough to be charged in the coldest day of its surroundings, W. */
export function heatToCharge({ cabinet, aroundC }: Plant): number {
  let coldestDayC = Infinity;
  for (let day = 0; day < 365; day++) {
    let sum = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) sum += aroundC[h]!;
    coldestDayC = Math.min(coldestDayC, sum / 24);
  }
  const { insulationWPerK, ventilationWPerK = 0, sharedRoom } = cabinet;
  const fromRoomW = sharedRoom ? sharedRoom.WPerK * (sharedRoom.roomC - keepAboveC) : 0;
  return Math.max((insulationWPerK + ventilationWPerK) * (keepAboveC - coldestDayC) - fromRoomW, 0);
}
