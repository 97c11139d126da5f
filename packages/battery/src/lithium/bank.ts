import type { Bank } from '../bank.js';
import type { ResolvedBank } from '../bank-settings.js';
import { coldestC, interpolate } from '../lead-acid/grid.js';
import { selfDischargeTable } from '../self-discharge.js';
import {
  capacityByTemp,
  chargeLimitByTemp,
  coulombicEfficiency,
  dischargeLimitByTemp,
  evenTable,
  fullnessFactor,
  resistanceByTemp,
  restByState,
} from './cell.js';

const stateSteps = 20;
const rest = evenTable(restByState, 1 / stateSteps);
const resistance = evenTable(resistanceByTemp, 5);
const capacity = evenTable(capacityByTemp, 5);
const chargeShare = evenTable(chargeLimitByTemp, 5);
const dischargeShare = evenTable(dischargeLimitByTemp, 5);

/** Integral of the rest voltage from empty to each of its points, V. */
const restIntegral = new Float64Array(stateSteps + 1);
for (let k = 1; k <= stateSteps; k++)
  restIntegral[k] = restIntegral[k - 1]! + (rest[k - 1]! + rest[k]!) / (2 * stateSteps);

function byTemp(table: Float64Array, tempC: number): number {
  return interpolate(table, (tempC - coldestC) * 0.2);
}

/** A LiFePO4 bank: rest voltage and one resistance, so that power to current is a quadratic. */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: the functions of a bank share what is worked out once for it
export function lithiumBank(settings: ResolvedBank): Bank {
  const { cells, floor, absorptionCellV, floatCellV, cutoffCellV, defaults } = settings;
  const refAh = settings.capacityAh;
  const cellOhm = resistance.map((factor) => (factor * defaults.resistance) / refAh);
  const chargeLimitA = settings.chargeLimitA ?? defaults.chargeRate * refAh;
  const dischargeLimitA = settings.dischargeLimitA ?? defaults.dischargeRate * refAh;
  const selfDischarge = selfDischargeTable(settings.selfDischargePerMonth);

  const restCellV = (s: number): number => interpolate(rest, s * stateSteps);
  const storedWh = (s: number): number => {
    const x = s > 0 ? Math.min(s, 1) * stateSteps : 0;
    const k = x < stateSteps ? x | 0 : stateSteps - 1;
    const f = x - k;
    const a = rest[k]!;
    return cells * refAh * (restIntegral[k]! + (f * (a + 0.5 * f * (rest[k + 1]! - a))) / stateSteps);
  };
  const chargeOhm = (s: number, tempC: number): number => byTemp(cellOhm, tempC) * fullnessFactor(s);
  const chargeLimitAmps = (tempC: number): number => chargeLimitA * byTemp(chargeShare, tempC);
  const reachableEmpty = (tempC: number): number => 1 - byTemp(capacity, tempC);

  return {
    traits: defaults.traits,
    cells,
    refAh,
    floor,
    lowestState: 0,
    usableWh: storedWh(1) - storedWh(floor),
    absorptionHours: settings.absorptionHours,
    tailA: settings.tailA ?? defaults.tailRate * refAh,
    chargeLimitA,
    dischargeLimitA,
    settings,
    ampereHoursIn: () => refAh,
    storedWh,
    restVoltage: (s) => cells * restCellV(s),
    chargeAmps: (powerW, s, tempC) => {
      const v = restCellV(s);
      const cellW = powerW / cells;
      return (2 * cellW) / (v + Math.sqrt(v * v + 4 * chargeOhm(s, tempC) * cellW));
    },
    dischargeAmps: (powerW, s, tempC) => {
      const v = restCellV(s);
      const cellW = powerW / cells;
      const under = v * v - 4 * byTemp(cellOhm, tempC) * cellW;
      // Past the largest power the voltage stays at half the rest voltage and the current goes on rising.
      return (2 * cellW) / (v + (under > 0 ? Math.sqrt(under) : 0));
    },
    terminalVoltage: (amps, s, tempC) => {
      const v = restCellV(s);
      if (amps > 0) return cells * (v + amps * chargeOhm(s, tempC));
      return cells * Math.max(v / 2, v + amps * byTemp(cellOhm, tempC));
    },
    chargeEfficiency: () => coulombicEfficiency,
    chargeLimitAmps,
    acceptanceAmps: (s, tempC, stage) => {
      const over = (stage === 1 ? floatCellV : absorptionCellV) - restCellV(s);
      if (!(over > 0) || s >= 1) return 0;
      const left = (1 - s) * 1e4;
      const amps = (over / chargeOhm(s, tempC)) * Math.min(left, 1);
      return Math.min(amps, chargeLimitAmps(tempC));
    },
    dischargeLimitAmps: (s, tempC) => {
      const over = restCellV(s) - cutoffCellV;
      if (!(over > 0)) return 0;
      const amps = over / byTemp(cellOhm, tempC);
      const limit = dischargeLimitA * byTemp(dischargeShare, tempC);
      return Math.min(amps, limit);
    },
    setVoltage: (stage) => cells * (stage === 1 ? floatCellV : absorptionCellV),
    selfDischargePerHour: (tempC) => interpolate(selfDischarge, tempC - coldestC),
    reachableEmpty,
    floorState: (tempC) => Math.max(floor, reachableEmpty(tempC)),
    freezingC: () => Number.NEGATIVE_INFINITY,
    gasEnergyWh: () => 0,
    waterLossGrams: () => 0,
  };
}
