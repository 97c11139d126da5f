import { mustLie, OutOfRangeError } from '@wintergap/ground';
import { type CellLimits, cellLimitsOf, cellsInSeries, setPointOfCell } from './cell-limits.js';
import {
  type Chemistry,
  type ChemistryDefaults,
  chemistryDefaults,
  type LeadAcidChemistry,
} from './chemistry-defaults.js';
import { type LabelPoint, rateWeightOf } from './lead-acid/capacity.js';
import { capacityAfterYears } from './life/capacity-after-years.js';
import { type CyclesAtDepth, checkCycleTable } from './life/cycle-life.js';

interface SharedSettings {
  /** Nominal voltage of the bank, V: 12, 24, 48 (lead-acid), 12.8, 25.6, 51.2 (lithium; 12, 24, 48 are read as these). */
  voltageV: number;
  /** Capacity on the label, Ah, and the discharge time it holds for, h. The state of charge is counted against it. */
  capacityAh: number;
  atRateH: number;
  /** Lowest state of charge the owner allows; below 0 where a discharge slower than the label's may go on. */
  floor?: number | undefined;
  /** Age, years; used when `agedCapacity` is not known. */
  ageYears?: number | undefined;
  /** Capacity left of the labelled one, 0..1. */
  agedCapacity?: number | undefined;
  /** Set voltages at 25 degC, of one cell (below 4 V) or of the bank (4 V and above). */
  absorptionV?: number | undefined;
  floatV?: number | undefined;
  absorptionHours?: number | undefined;
  /** Current at which absorption may end, A. */
  tailA?: number | undefined;
  chargeLimitA?: number | undefined;
  dischargeLimitA?: number | undefined;
  /** Voltage under load where the inverter or the bank's electronics cut off, of one cell or of the bank, V. */
  cutoffV?: number | undefined;
  selfDischargePerMonth?: number | undefined;
  /** A maker's table; otherwise a generic one. */
  cyclesByDepth?: readonly CyclesAtDepth[] | undefined;
  /** Years to 80 % capacity at 25 degC, hardly cycled. */
  calendarLifeYears?: number | undefined;
}

export interface LeadAcidSettings extends SharedSettings {
  chemistry: LeadAcidChemistry;
  /** A second point of the label, which fixes how capacity changes with rate; Copetti's rule without it. */
  otherLabel?: LabelPoint | undefined;
  /** Flooded cells only in practice, V at 25 degC, of one cell or of the bank. */
  equaliseV?: number | undefined;
  /** Change of all set voltages, V per cell and K; negative. */
  compensationVPerCellK?: number | undefined;
}

export interface LithiumSettings extends SharedSettings {
  chemistry: 'lithium-iron-phosphate';
}

export type BankSettings = LeadAcidSettings | LithiumSettings;

/** A bank with nothing left open; voltages per cell, currents of the bank. */
export interface ResolvedBank {
  chemistry: Chemistry;
  cells: number;
  /** Labelled capacity less age, Ah at `atRateH`. */
  capacityAh: number;
  atRateH: number;
  /** How capacity changes with rate, lead-acid only: see `capacityByRate`. */
  rateWeight: number;
  /** Share of the labelled capacity left by age. */
  agedCapacity: number;
  floor: number;
  absorptionCellV: number;
  floatCellV: number;
  equaliseCellV: number;
  compensationVPerCellK: number;
  cutoffCellV: number;
  absorptionHours: number;
  /** Undefined: a share of the reference capacity, see the defaults. */
  tailA: number | undefined;
  chargeLimitA: number | undefined;
  dischargeLimitA: number | undefined;
  selfDischargePerMonth: number;
  cyclesByDepth: readonly CyclesAtDepth[];
  calendarLifeYears: number;
  defaults: ChemistryDefaults;
}

/**
 * Checks settings and fills in what is missing from the chemistry's defaults.
 *
 * @throws OutOfRangeError naming the setting, what is allowed and what came
 */
export function resolveBank(settings: BankSettings): ResolvedBank {
  const defaults = chemistryDefaults[settings.chemistry];
  if (defaults === undefined) {
    throw new OutOfRangeError(
      `chemistry must be one of ${Object.keys(chemistryDefaults).join(', ')}, got ${settings.chemistry}`,
    );
  }
  const { voltageV, capacityAh, atRateH } = settings;
  mustLie('voltageV', voltageV, 1, 2000);
  mustLie('capacityAh', capacityAh, 0.1, 1e7);
  mustLie('atRateH', atRateH, 0.25, 500);
  const cells = cellsInSeries(settings.chemistry, voltageV);
  if (cells === null) {
    throw new OutOfRangeError(
      `voltageV must be a multiple of ${defaults.cellV} V for ${settings.chemistry}, got ${voltageV}`,
    );
  }
  const limits = cellLimitsOf(settings.chemistry);
  const { otherLabel, compensationVPerCellK } = leadAcidKeys(settings);
  const calendarLifeYears =
    optional('calendarLifeYears', settings.calendarLifeYears, 0.5, 100) ?? defaults.calendarLifeYears;
  const ageYears = optional('ageYears', settings.ageYears, 0, 100) ?? 0;
  const agedCapacity =
    optional('agedCapacity', settings.agedCapacity, 0.05, 1.5) ?? capacityAfterYears(ageYears, 1 / calendarLifeYears);
  const cyclesByDepth = settings.cyclesByDepth ?? defaults.cyclesByDepth;
  checkCycleTable(cyclesByDepth);
  return {
    chemistry: settings.chemistry,
    cells,
    capacityAh: capacityAh * agedCapacity,
    atRateH,
    rateWeight: otherLabel ? rateWeightOf({ capacityAh, atRateH }, otherLabel) : defaults.rateWeight,
    agedCapacity,
    floor: optional('floor', settings.floor, limits.leastFloor, 0.99) ?? defaults.floor,
    ...setPoints(settings, cells, defaults, limits),
    compensationVPerCellK:
      optional('compensationVPerCellK', compensationVPerCellK, limits.leastCompensationVPerK, 0) ??
      defaults.compensationVPerCellK,
    absorptionHours: optional('absorptionHours', settings.absorptionHours, 0, 48) ?? defaults.absorptionHours,
    tailA: optional('tailA', settings.tailA, 0, limits.mostTailRate * capacityAh),
    chargeLimitA: optional('chargeLimitA', settings.chargeLimitA, 0, 1e7),
    dischargeLimitA: optional('dischargeLimitA', settings.dischargeLimitA, 0, 1e7),
    selfDischargePerMonth:
      optional('selfDischargePerMonth', settings.selfDischargePerMonth, 0, 0.5) ?? defaults.selfDischargePerMonth,
    cyclesByDepth,
    calendarLifeYears,
    defaults,
  };
}

type SetPoints = Pick<ResolvedBank, 'absorptionCellV' | 'floatCellV' | 'equaliseCellV' | 'cutoffCellV'>;

/** Set voltages of one cell. A bank charged higher or lower than usual is floated and equalised so too, if nothing else is said. */
function setPoints(settings: BankSettings, cells: number, defaults: ChemistryDefaults, limits: CellLimits): SetPoints {
  const { leastSetV: least, mostSetV: most, leastCutoffV, mostCutoffV } = limits;
  const cell = (name: string, volts: number | undefined, fallback: number, low: number, high: number): number => {
    if (volts === undefined) return fallback;
    const cellV = setPointOfCell(volts, cells);
    if (!(cellV >= low && cellV <= high)) {
      throw new OutOfRangeError(`${name} must be ${low} to ${high} V per cell (${cells} cells), got ${volts}`);
    }
    return cellV;
  };
  const absorptionCellV = cell('absorptionV', settings.absorptionV, defaults.absorptionCellV, least, most);
  const floatCellV = cell('floatV', settings.floatV, Math.min(defaults.floatCellV, absorptionCellV), least, most);
  if (floatCellV > absorptionCellV) {
    throw new OutOfRangeError(
      `floatV must not be above absorptionV, got ${floatCellV} and ${absorptionCellV} V per cell`,
    );
  }
  const usualEqualiseV =
    defaults.traits.gas === 'vented' ? Math.max(defaults.equaliseCellV, absorptionCellV) : absorptionCellV;
  const equaliseCellV = cell('equaliseV', leadAcidKeys(settings).equaliseV, usualEqualiseV, least, most);
  if (equaliseCellV < absorptionCellV) {
    throw new OutOfRangeError(
      `equaliseV must not be below absorptionV, got ${equaliseCellV} and ${absorptionCellV} V per cell`,
    );
  }
  const cutoffCellV = cell('cutoffV', settings.cutoffV, defaults.cutoffCellV, leastCutoffV, mostCutoffV);
  return { absorptionCellV, floatCellV, equaliseCellV, cutoffCellV };
}

const leadAcidKeys = (settings: BankSettings): Partial<LeadAcidSettings> =>
  settings.chemistry === 'lithium-iron-phosphate' ? {} : settings;

function optional(name: string, value: number | undefined, low: number, high: number): number | undefined {
  if (value !== undefined) mustLie(name, value, low, high);
  return value;
}
