import type { Bank } from '../bank.js';
import type { ResolvedBank } from '../bank-settings.js';
import { selfDischargeTable } from '../self-discharge.js';
import { capacityByDischargeTime, capacityByRate, capacityByTemperature, tenHourAh } from './capacity.js';
import { restCellV } from './discharge.js';
import { freezingC } from './freezing.js';
import { sealedFullCell, ventedFullCell } from './full-cell.js';
import { coldestC, interpolate, interpolatePower, interpolateState } from './grid.js';
import { compensatedCellV } from './set-voltage.js';
import { chargePosition, dischargePosition, type LeadAcidTables, leadAcidTables, powerPosition } from './tables.js';
import { gasEnergyWh, waterLossGrams } from './water.js';

/** Tables of the last few kinds of cell: a sweep over bank sizes makes them once. */
const kept = new Map<string, LeadAcidTables>();
const keptMost = 8;

/** 1 - exp(-z) for z = k / 64, k = 0..2048: past z = 32 it is 1 to the last bit that matters. */
const efficiencySteps = 64;
const storedShare = Float64Array.from(
  { length: 32 * efficiencySteps + 1 },
  (_, k) => -Math.expm1(-k / efficiencySteps),
);

/** Capacity is tabulated at rates I/I10 = (k / 16)^2, k = 0..64. */
const rateSteps = 16;

/** Discharge time, h, whose capacity the trade table of acid density calls empty. */
const acidEmptyH = 20;

/**
 * A lead-acid bank after Copetti, Lorenzo & Chenlo (1993). Their state of charge is that of C10; the bank's is that of
 * its label, and all equations are asked by the charge removed, so that one and the same bank behaves alike whichever
 * capacity its label prints.
 */
// biome-ignore lint/complexity/noExcessiveLinesPerFunction: the functions of a bank share what is worked out once for it
export function leadAcidBank(settings: ResolvedBank): Bank {
  const { cells, floor, absorptionCellV, floatCellV, equaliseCellV, compensationVPerCellK, defaults } = settings;
  const { rateWeight, capacityAh: refAh } = settings;
  const sealed = defaults.traits.gas !== 'vented';
  const c10 = tenHourAh(refAh, settings.atRateH, rateWeight);
  /** Depth, charge removed over C10, of a bank whose label is used up. */
  const labelDepth = refAh / c10;
  const acidDepth = refAh / (c10 * capacityByDischargeTime(acidEmptyH, rateWeight));
  const lowestState = Math.min(floor, 0);
  const deepest = labelDepth * (1 - lowestState);
  const capacityTable = Float64Array.from(
    { length: 65 },
    (_, k) => capacityByRate((k / rateSteps) ** 2, rateWeight) / labelDepth,
  );
  const { chargeV, dischargeV, acceptance, dischargeLimit } = tablesOf(settings, deepest);
  const absorption = acceptance[0];
  const float = acceptance[1];
  const equalise = acceptance[2];
  const selfDischarge = selfDischargeTable(settings.selfDischargePerMonth);
  const chargeLimitA = settings.chargeLimitA ?? defaults.chargeRate * refAh;
  const dischargeLimitA = settings.dischargeLimitA ?? defaults.dischargeRate * refAh;
  const powerPerWatt = powerPosition(1 / (cells * c10)) ** 2;
  const perI10 = 10 / c10;
  const perSpan = 1 / (1 - lowestState);
  const gassingSlope = efficiencySteps * 20.73 * labelDepth * defaults.efficiencyFactor;
  const restFullV = restCellV(1);
  const restFallV = restCellV(1) - restCellV(1 - labelDepth);

  const chargeVoltage = (powerW: number, s: number, tempC: number): number =>
    cells * interpolatePower(chargeV, Math.sqrt(powerW * powerPerWatt), chargePosition((1 - s) * perSpan), tempC);
  const dischargeVoltage = (powerW: number, s: number, tempC: number): number =>
    cells * interpolatePower(dischargeV, Math.sqrt(powerW * powerPerWatt), dischargePosition((1 - s) * perSpan), tempC);
  const storedWh = (s: number): number => cells * refAh * s * (restFullV - restFallV + 0.5 * restFallV * s);
  const reachableEmpty = (tempC: number, amps: number): number => {
    return 1 - interpolate(capacityTable, rateSteps * Math.sqrt(amps * perI10)) * capacityByTemperature(tempC);
  };

  return {
    traits: defaults.traits,
    cells,
    refAh,
    floor,
    lowestState,
    usableWh: storedWh(1) - storedWh(floor),
    absorptionHours: settings.absorptionHours,
    tailA: settings.tailA ?? defaults.tailRate * refAh,
    chargeLimitA,
    dischargeLimitA,
    settings,
    ampereHoursIn: (hours) => c10 * capacityByDischargeTime(hours, rateWeight),
    storedWh,
    restVoltage: (s) => cells * (restFullV - restFallV * (1 - s)),
    chargeAmps: (powerW, s, tempC) => powerW / chargeVoltage(powerW, s, tempC),
    dischargeAmps: (powerW, s, tempC) => powerW / dischargeVoltage(powerW, s, tempC),
    terminalVoltage: (amps, s, tempC) =>
      amps > 0
        ? voltageAt(amps, 4 * cells, (powerW) => chargeVoltage(powerW, s, tempC))
        : voltageAt(-amps, 4 * cells, (powerW) => dischargeVoltage(powerW, s, tempC)),
    chargeEfficiency: (s, amps) => interpolate(storedShare, (gassingSlope * (1 - s)) / (amps * perI10 + 0.55)),
    chargeLimitAmps: () => chargeLimitA,
    acceptanceAmps: (s, tempC, stage) => {
      const table = stage === 0 ? absorption : stage === 1 ? float : equalise;
      const amps = c10 * interpolateState(table, chargePosition((1 - s) * perSpan), tempC);
      return Math.min(amps, chargeLimitA);
    },
    dischargeLimitAmps: (s, tempC) => {
      const amps = c10 * interpolateState(dischargeLimit, dischargePosition((1 - s) * perSpan), tempC);
      return Math.min(amps, dischargeLimitA);
    },
    setVoltage: (stage, tempC) =>
      cells *
      compensatedCellV(
        stage === 0 ? absorptionCellV : stage === 1 ? floatCellV : equaliseCellV,
        compensationVPerCellK,
        tempC,
      ),
    selfDischargePerHour: (tempC) => interpolate(selfDischarge, tempC - coldestC),
    reachableEmpty,
    floorState: (tempC, amps) => Math.max(floor, reachableEmpty(tempC, amps)),
    freezingC: (s) => freezingC(1 - (1 - s) * acidDepth),
    gasEnergyWh: (gassingAh) => gasEnergyWh(gassingAh, cells, defaults.recombination),
    // What little a sealed cell dries out by cannot be filled up: nobody waters it.
    waterLossGrams: (gassingAh) => (sealed ? 0 : waterLossGrams(gassingAh, cells, defaults.recombination)),
  };
}

/**
 * Terminal voltage at a current from a table of voltage by power: the power p with p = amps x voltage(p). Current
 * rises with power in both tables, so bisection finds it.
 */
function voltageAt(amps: number, mostV: number, voltage: (powerW: number) => number): number {
  let low = 0;
  let high = amps * mostV;
  for (let k = 0; k < 50; k++) {
    const powerW = (low + high) / 2;
    if (powerW < amps * voltage(powerW)) low = powerW;
    else high = powerW;
  }
  return voltage((low + high) / 2);
}

function tablesOf(settings: ResolvedBank, deepest: number): LeadAcidTables {
  const { rateWeight, absorptionCellV, floatCellV, equaliseCellV, compensationVPerCellK, cutoffCellV } = settings;
  const { resistance: resistanceFactor, efficiencyFactor } = settings.defaults;
  const sealed = settings.defaults.traits.gas !== 'vented';
  const setV = [absorptionCellV, floatCellV, equaliseCellV];
  const key = [
    ...setV,
    compensationVPerCellK,
    cutoffCellV,
    resistanceFactor,
    efficiencyFactor,
    sealed,
    rateWeight,
    deepest,
  ].join(' ');
  let tables = kept.get(key);
  if (tables === undefined) {
    tables = leadAcidTables({
      resistanceFactor,
      efficiencyFactor,
      full: sealed ? sealedFullCell : ventedFullCell,
      rateWeight,
      deepest,
      cutoffV: cutoffCellV,
      setCellV: (stage, tempC) => compensatedCellV(setV[stage]!, compensationVPerCellK, tempC),
    });
    if (kept.size >= keptMost) kept.delete(kept.keys().next().value!);
    kept.set(key, tables);
  }
  return tables;
}
