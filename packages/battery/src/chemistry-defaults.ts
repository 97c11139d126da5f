import { type CellTraits, lithiumTraits, sealedLeadAcid, ventedLeadAcid } from './cell-traits.js';
import { copettiRateWeight } from './lead-acid/capacity.js';
import type { CyclesAtDepth } from './life/cycle-life.js';

export type Chemistry = 'flooded-lead-acid' | 'agm' | 'gel' | 'lithium-iron-phosphate';
export type LeadAcidChemistry = Exclude<Chemistry, 'lithium-iron-phosphate'>;

/** What is assumed where the owner says nothing. Voltages per cell at 25 degC, currents as multiples of C_ref per hour. */
export interface ChemistryDefaults {
  /** As people say it. */
  inWords: string;
  traits: CellTraits;
  cellV: number;
  floor: number;
  absorptionCellV: number;
  floatCellV: number;
  equaliseCellV: number;
  compensationVPerCellK: number;
  cutoffCellV: number;
  absorptionHours: number;
  tailRate: number;
  chargeRate: number;
  dischargeRate: number;
  /** Internal drop against the equations' flooded cells (lead-acid); ohm x Ah of one cell at 25 degC (lithium). */
  resistance: number;
  selfDischargePerMonth: number;
  /** Factor of the charge efficiency's exponent, see `ChargedCell`; lead-acid only. */
  efficiencyFactor: number;
  /** How capacity changes with rate, see `capacityByRate`; lead-acid only. */
  rateWeight: number;
  /** Share of the gassing charge whose water comes back as water. */
  recombination: number;
  calendarLifeYears: number;
  cyclesByDepth: readonly CyclesAtDepth[];
  whPerKg: number;
  specificHeatWhPerKgK: number;
}

/**
 * Nickel-iron is left out: no sourced voltage, efficiency and temperature data are at hand.
 *
 * Sources by row, the same for every chemistry unless a line says otherwise:
 * - nominal cell voltage: trade convention
 * - floor, absorption hours, tail, current limits, cutoff: common practice, no source
 * - set voltages and compensation: common practice (2.40-2.47 V flooded, 2.35-2.40 AGM, float 2.23-2.27, equalise
 *   2.55-2.65; -3 to -5 mV per cell and K)
 * - self-discharge: common practice, 3-5 % a month flooded, 1-3 % LiFePO4
 * - cycles by depth, calendar life, recombination, Wh/kg: common practice, no source; give a maker's figures instead
 * - tail: well above what a full cell draws at absorption (`FullCell`), or a charge never ends by it
 * - efficiency: the equations for flooded cells; sealed ones take charge without loss until nearer to full and return
 *   95 % or more of the ampere-hours over a year: common practice, no source
 * - rate weight: Copetti et al. (1993) flooded; sealed by their Peukert exponents, 1.05-1.15 AGM, 1.1-1.25 gel, from memory
 * - specific heat: handbook size, lead-acid with its acid about 1.0 kJ/(kg K), lithium cells about 1.0; from memory
 */
export const chemistryDefaults: Readonly<Record<Chemistry, ChemistryDefaults>> = {
  'flooded-lead-acid': {
    inWords: 'flooded lead-acid',
    traits: ventedLeadAcid,
    cellV: 2,
    floor: 0.5,
    absorptionCellV: 2.4,
    floatCellV: 2.25,
    equaliseCellV: 2.58,
    compensationVPerCellK: -0.005,
    cutoffCellV: 1.75,
    absorptionHours: 3,
    tailRate: 0.02,
    chargeRate: 0.25,
    dischargeRate: 1,
    resistance: 1, // the equations as they stand
    efficiencyFactor: 1,
    rateWeight: copettiRateWeight,
    selfDischargePerMonth: 0.04,
    recombination: 0,
    calendarLifeYears: 12,
    cyclesByDepth: [
      { depth: 0.1, cycles: 6000 },
      { depth: 0.2, cycles: 3300 },
      { depth: 0.5, cycles: 1400 },
      { depth: 0.8, cycles: 800 },
    ],
    whPerKg: 33,
    specificHeatWhPerKgK: 0.28,
  },
  agm: {
    inWords: 'sealed lead-acid (AGM)',
    traits: sealedLeadAcid,
    cellV: 2,
    floor: 0.5,
    absorptionCellV: 2.38,
    floatCellV: 2.25,
    equaliseCellV: 2.38, // sealed cells are not equalised: the same as absorption
    compensationVPerCellK: -0.004,
    cutoffCellV: 1.75,
    absorptionHours: 3,
    tailRate: 0.02,
    chargeRate: 0.3,
    dischargeRate: 1,
    resistance: 0.7, // glass mat and close plates: common practice, no source
    efficiencyFactor: 10,
    rateWeight: 0.2,
    selfDischargePerMonth: 0.02,
    recombination: 0.98,
    calendarLifeYears: 10,
    cyclesByDepth: [
      { depth: 0.1, cycles: 4500 },
      { depth: 0.2, cycles: 2300 },
      { depth: 0.5, cycles: 900 },
      { depth: 0.8, cycles: 500 },
    ],
    whPerKg: 35,
    specificHeatWhPerKgK: 0.26,
  },
  gel: {
    inWords: 'sealed lead-acid (gel)',
    traits: sealedLeadAcid,
    cellV: 2,
    floor: 0.5,
    absorptionCellV: 2.35,
    floatCellV: 2.25,
    equaliseCellV: 2.35, // sealed cells are not equalised: the same as absorption
    compensationVPerCellK: -0.004,
    cutoffCellV: 1.75,
    absorptionHours: 4,
    tailRate: 0.02,
    chargeRate: 0.2,
    dischargeRate: 1,
    resistance: 1.1, // slower acid in the gel: common practice, no source
    efficiencyFactor: 10,
    rateWeight: 0.3,
    selfDischargePerMonth: 0.02,
    recombination: 0.98,
    calendarLifeYears: 12,
    cyclesByDepth: [
      { depth: 0.1, cycles: 5500 },
      { depth: 0.2, cycles: 3000 },
      { depth: 0.5, cycles: 1200 },
      { depth: 0.8, cycles: 700 },
    ],
    whPerKg: 33,
    specificHeatWhPerKgK: 0.27,
  },
  'lithium-iron-phosphate': {
    inWords: 'lithium iron phosphate',
    traits: lithiumTraits,
    cellV: 3.2,
    floor: 0.1,
    absorptionCellV: 3.55,
    floatCellV: 3.37,
    equaliseCellV: 3.55, // balancing happens at absorption: the same voltage
    compensationVPerCellK: 0, // lithium set voltages are not compensated
    cutoffCellV: 2.8,
    absorptionHours: 0.5,
    tailRate: 0.05,
    chargeRate: 0.5,
    dischargeRate: 1,
    resistance: 0.25, // 2.5 milliohm in a 100 Ah cell with slow polarisation and joints; 96-97 % round trip at 5 h
    efficiencyFactor: 1,
    rateWeight: 0,
    selfDischargePerMonth: 0.02,
    recombination: 1,
    calendarLifeYears: 15,
    cyclesByDepth: [
      { depth: 0.2, cycles: 15000 },
      { depth: 0.5, cycles: 7000 },
      { depth: 0.8, cycles: 4000 },
      { depth: 1, cycles: 3000 },
    ],
    whPerKg: 110,
    specificHeatWhPerKgK: 0.28,
  },
};
