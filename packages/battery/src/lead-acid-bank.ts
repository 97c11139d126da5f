import type { Bank } from './bank.js';
import type { ResolvedBank } from './bank-settings.js';
import { freezingC } from './freezing.js';
import { coldestC, interpolate, interpolatePower, interpolateState } from './grid.js';
import { capacityByRate, capacityByTemperature, tenHourAh } from './lead-acid-capacity.js';
import { restCellV } from './lead-acid-discharge.js';
import {
  chargePosition,
  dischargePosition,
  type LeadAcidTables,
  leadAcidTables,
  powerPosition,
} from './lead-acid-tables.js';
import { selfDischargeTable } from './self-discharge.js';
import { compensatedCellV } from './set-voltage.js';
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

/** Capacity over C10 at rate I/I10 = (k / 16)^2, k = 0..64. */
const rateSteps = 16;
const capacityTable = Float64Array.from({ length: 65 }, (_, k) => capacityByRate((k / rateSteps) ** 2));

/** A lead-acid bank after Copetti, Lorenzo & Chenlo (1993); the reference capacity is C10. */
export function leadAcidBank(settings: ResolvedBank): Bank {
  const { cells, floor, absorptionCellV, floatCellV, equaliseCellV, compensationVPerCellK, defaults } = settings;
  const refAh = tenHourAh(settings.capacityAh, settings.atRateH);
  const { chargeV, dischargeV, acceptance, dischargeLimit } = tablesOf(settings);
  const absorption = acceptance[0];
  const float = acceptance[1];
  const equalise = acceptance[2];
  const selfDischarge = selfDischargeTable(settings.selfDischargePerMonth);
  const chargeLimitA = settings.chargeLimitA ?? defaults.chargeRate * refAh;
  const dischargeLimitA = settings.dischargeLimitA ?? defaults.dischargeRate * refAh;
  const powerPerWatt = powerPosition(1 / (cells * refAh)) ** 2;
  const perI10 = 10 / refAh;

  const chargeVoltage = (powerW: number, s: number, tempC: number): number =>
    cells * interpolatePower(chargeV, Math.sqrt(powerW * powerPerWatt), chargePosition(s), tempC);
  const dischargeVoltage = (powerW: number, s: number, tempC: number): number =>
    cells * interpolatePower(dischargeV, Math.sqrt(powerW * powerPerWatt), dischargePosition(s), tempC);
  const storedWh = (s: number): number => cells * refAh * s * (1.965 + 0.06 * s);
  const reachableEmpty = (tempC: number, amps: number): number => {
    const empty = 1 - interpolate(capacityTable, rateSteps * Math.sqrt(amps * perI10)) * capacityByTemperature(tempC);
    return Math.max(empty, 0);
  };

  return {
    chemistry: settings.chemistry,
    cells,
    refAh,
    floor,
    usableWh: storedWh(1) - storedWh(floor),
    absorptionHours: settings.absorptionHours,
    tailA: settings.tailA ?? defaults.tailRate * refAh,
    chargeLimitA,
    dischargeLimitA,
    settings,
    storedWh,
    restVoltage: (s) => cells * restCellV(s),
    chargeAmps: (powerW, s, tempC) => powerW / chargeVoltage(powerW, s, tempC),
    dischargeAmps: (powerW, s, tempC) => powerW / dischargeVoltage(powerW, s, tempC),
    terminalVoltage: (amps, s, tempC) =>
      amps > 0
        ? voltageAt(amps, 4 * cells, (powerW) => chargeVoltage(powerW, s, tempC))
        : voltageAt(-amps, 4 * cells, (powerW) => dischargeVoltage(powerW, s, tempC)),
    chargeEfficiency: (s, amps) =>
      interpolate(storedShare, (efficiencySteps * 20.73 * (1 - s)) / (amps * perI10 + 0.55)),
    acceptanceAmps: (s, tempC, stage) => {
      const table = stage === 0 ? absorption : stage === 1 ? float : equalise;
      const amps = refAh * interpolateState(table, chargePosition(s), tempC);
      return Math.min(amps, chargeLimitA);
    },
    dischargeLimitAmps: (s, tempC) => {
      const amps = refAh * interpolateState(dischargeLimit, dischargePosition(s), tempC);
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
    freezingC,
    gasEnergyWh: (gassingAh) => gasEnergyWh(gassingAh, cells, defaults.recombination),
    waterLossGrams: (gassingAh) => waterLossGrams(gassingAh, cells, defaults.recombination),
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

function tablesOf(settings: ResolvedBank): LeadAcidTables {
  const { absorptionCellV, floatCellV, equaliseCellV, compensationVPerCellK, cutoffCellV } = settings;
  const resistanceFactor = settings.defaults.resistance;
  const setV = [absorptionCellV, floatCellV, equaliseCellV];
  const key = [...setV, compensationVPerCellK, cutoffCellV, resistanceFactor].join(' ');
  let tables = kept.get(key);
  if (tables === undefined) {
    tables = leadAcidTables({
      resistanceFactor,
      cutoffV: cutoffCellV,
      setCellV: (stage, tempC) => compensatedCellV(setV[stage]!, compensationVPerCellK, tempC),
    });
    if (kept.size >= keptMost) kept.delete(kept.keys().next().value!);
    kept.set(key, tables);
  }
  return tables;
}
