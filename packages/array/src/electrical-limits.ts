import { mustBeAbove, OutOfRangeError } from '@wintergap/ground';
import { coldVoltageRatio } from './cold-voltage.js';
import { ampacityHintA, type Cable, cableOhm, fuseHintA } from './conductors.js';
import { type Controller, checkController, defaultMarginV } from './controller.js';
import type { ModuleSheet } from './module-sheet.js';
import { currentAt, maximumPower } from './operating-point.js';
import { powerCoefficient } from './power-coefficient.js';
import type { ModuleParameters } from './translation.js';

export type LimitCode =
  | 'cold-voltage'
  | 'controller-current'
  | 'conductor-current'
  | 'voltage-drop'
  | 'string-fuse'
  | 'voltage-too-low'
  | 'voltage-too-high'
  | 'power-coefficient';

/** One calculated electrical check. */
export interface Limit {
  code: LimitCode;
  /** `exceeded`: must be changed; `note`: allowed or usual, but worth knowing; `ok`. */
  level: 'ok' | 'note' | 'exceeded';
  text: string;
  value: number;
  limit: number;
}

/** What a list of limits must be shown with. */
export const limitsNotice =
  'calculated estimates for planning: the local electrical code decides, and licensed people do or check the work';

export interface LimitsInput {
  /** The sheet; without `vocPerK` the code table for crystalline silicon gives the cold voltage. */
  sheet: Omit<ModuleSheet, 'vocPerK'> & { vocPerK?: number };
  parameters: ModuleParameters;
  inSeries: number;
  strings: number;
  controller: Controller;
  /** Nominal bank voltage, V. */
  bankV: number;
  /** The bank's absorption voltage, V: temperature-compensated for a bank on the hottest day, and at 25 degC. */
  absorptionHotV: number;
  absorptionV: number;
  /** Lowest air temperature on record, degC, or the lowest that is known. */
  recordLowC: number;
  /** Set when no record is known and `recordLowC` is the coldest hour of the weather: a real record is lower. */
  recordIsUnknown?: boolean;
  /** Cell temperature on a hot, still, clear day, degC. */
  hotCellC: number;
  cable: Cable;
}

// Common US code: sunlight above 1000 W/m2 for hours, and once more for conductors and fuses under continuous load.
const sunnyFactor = 1.25;
const continuousFactor = 1.25 * 1.25;
const dropLimit = 0.03;
/** A direct connection that throws away more than this at 25 degC has too many cells in series. */
const wasteLimit = 0.25;
/** Model and sheet apart by more, per K: the year's gain in the cold is uncertain by 2 to 3 %. */
const coefficientLimit = 0.0007;

/** The electrical checks of one array, all of them, met or not; show them with `limitsNotice`. */
export function electricalLimits(input: LimitsInput): Limit[] {
  checkController(input.controller);
  if (!(input.bankV > 0 && input.bankV <= 1000))
    throw new OutOfRangeError(`bankV must be above 0 to 1000, got ${input.bankV}`);
  for (const name of ['absorptionHotV', 'absorptionV'] as const) mustBeAbove(name, input[name], 0);
  if (!(input.hotCellC >= -50 && input.hotCellC <= 120)) {
    throw new OutOfRangeError(`hotCellC must be -50 to 120, got ${input.hotCellC}`);
  }
  const limits = [coldVoltage(input), controllerCurrent(input), conductorCurrent(input), voltageDrop(input)];
  if (input.strings >= 3) limits.push(stringFuse(input));
  limits.push(voltageTooLow(input));
  if (input.controller.kind === 'direct') limits.push(voltageTooHigh(input));
  if (input.sheet.powerPerK !== undefined) limits.push(coefficient(input, input.sheet.powerPerK));
  return limits.filter((limit) => limit !== null);
}

function coldVoltage({ sheet, inSeries, recordLowC, recordIsUnknown, controller }: LimitsInput): Limit {
  const value = inSeries * sheet.vocV * coldVoltageRatio(recordLowC, sheet.vocPerK);
  const limit = controller.maxVoltageV ?? Number.POSITIVE_INFINITY;
  const how = sheet.vocPerK === undefined ? 'by the table for crystalline silicon' : "by the sheet's coefficient";
  const lowest = recordIsUnknown ? 'the coldest hour of the weather, no record being given,' : 'the record low of';
  const found = `open-circuit voltage of ${inSeries} in series at ${lowest} ${round(recordLowC)} degC, ${how}: ${round(value)} V`;
  if (controller.maxVoltageV === undefined) {
    const text = `${found}; not checked, since nothing says what the controller bears (maxVoltage)`;
    return { code: 'cold-voltage', level: 'note', text, value, limit };
  }
  const text = `${found}, controller limit ${round(limit)} V`;
  return value > limit
    ? { code: 'cold-voltage', level: 'exceeded', text: `${text}; it can destroy the controller`, value, limit }
    : { code: 'cold-voltage', level: 'ok', text, value, limit };
}

function controllerCurrent({ sheet, inSeries, strings, controller, bankV }: LimitsInput): Limit | null {
  const limit = controller.maxCurrentA;
  if (limit === undefined) return null;
  if (controller.kind === 'direct') {
    const value = sunnyFactor * strings * sheet.iscA;
    const text = `125 % of the short-circuit current of ${stringsText(strings)}: ${round(value)} A, controller limit ${round(limit)} A`;
    return { code: 'controller-current', level: value > limit ? 'exceeded' : 'ok', text, value, limit };
  }
  const value = (inSeries * strings * sheet.vmpV * sheet.impA) / bankV;
  const text = `rated power at ${round(bankV)} V: ${round(value)} A, controller limit ${round(limit)} A`;
  return value > limit
    ? { code: 'controller-current', level: 'note', text: `${text}; it clips in strong light`, value, limit }
    : { code: 'controller-current', level: 'ok', text, value, limit };
}

function conductorCurrent({ sheet, strings, cable }: LimitsInput): Limit {
  const value = continuousFactor * strings * sheet.iscA;
  const limit = ampacityHintA(cable.areaMm2);
  const text =
    `156 % of the short-circuit current of ${stringsText(strings)}: ${round(value)} A, rule of thumb for ` +
    `${round(cable.areaMm2)} mm2 copper ${round(limit)} A`;
  return { code: 'conductor-current', level: value > limit ? 'exceeded' : 'ok', text, value, limit };
}

function voltageDrop({ sheet, inSeries, strings, cable }: LimitsInput): Limit {
  const value = (strings * sheet.impA * cableOhm(cable)) / (inSeries * sheet.vmpV);
  const text = `cable drop at rated current: ${round(100 * value)} %, usual aim ${100 * dropLimit} % or less`;
  return { code: 'voltage-drop', level: value > dropLimit ? 'note' : 'ok', text, value, limit: dropLimit };
}

function stringFuse({ sheet, strings }: LimitsInput): Limit {
  const value = (strings - 1) * sheet.iscA;
  const limit = sheet.iscA;
  const fuseA = fuseHintA(continuousFactor * sheet.iscA);
  const size = fuseA === null ? 'no common size' : `${fuseA} A or more`;
  const text =
    `a faulty string can take the current of the other ${strings - 1}: ${round(value)} A; fuse each string ` +
    `(156 % of short-circuit current: ${size}, not above the module's series fuse rating)`;
  return { code: 'string-fuse', level: 'note', text, value, limit };
}

function voltageTooLow(input: LimitsInput): Limit {
  const { parameters, inSeries, strings, controller, bankV, absorptionHotV, hotCellC, cable } = input;
  const point = new Float64Array(3);
  maximumPower(parameters, 1000, hotCellC, point);
  const value = inSeries * point[1]! - strings * point[2]! * cableOhm(cable);
  const direct = controller.kind === 'direct';
  const limit = absorptionHotV + (direct ? 0 : (controller.minVoltageAboveBankV ?? defaultMarginV));
  const text =
    `best voltage at ${round(hotCellC)} degC cells, after the cable: ${round(value)} V, ` +
    `charging a ${round(bankV)} V bank takes ${round(limit)} V`;
  if (value >= limit) return { code: 'voltage-too-low', level: 'ok', text, value, limit };
  // Well below, hardly any current flows at charging voltage; a little below, the array works past its best point.
  const level = value < 0.9 * limit ? 'exceeded' : 'note';
  return { code: 'voltage-too-low', level, text: `${text}; put more cells in series`, value, limit };
}

function voltageTooHigh({ parameters, inSeries, absorptionV }: LimitsInput): Limit {
  const point = new Float64Array(3);
  maximumPower(parameters, 1000, 25, point);
  const moduleV = absorptionV / inSeries;
  const value = 1 - (moduleV * Math.max(0, currentAt(parameters, 1000, 25, moduleV))) / point[0]!;
  const text = `direct connection at ${round(absorptionV)} V leaves ${round(100 * value)} % of the rated power unused`;
  // Too few cells in series waste power as well; that is the other check's.
  const high = value > wasteLimit && point[1]! > moduleV;
  return {
    code: 'voltage-too-high',
    level: high ? 'note' : 'ok',
    text: high ? `${text}; fewer cells in series or a maximum-power controller would use it` : text,
    value,
    limit: wasteLimit,
  };
}

function coefficient({ parameters }: LimitsInput, sheetPerK: number): Limit {
  const value = powerCoefficient(parameters) - sheetPerK;
  const text =
    `power changes by ${round(100 * powerCoefficient(parameters))} % per K on the solved curve, ` +
    `by ${round(100 * sheetPerK)} % on the sheet`;
  const level = Math.abs(value) > coefficientLimit ? 'note' : 'ok';
  return { code: 'power-coefficient', level, text, value, limit: coefficientLimit };
}

const stringsText = (strings: number): string => (strings === 1 ? 'one string' : `${strings} strings`);

/** Three significant digits or the whole number. */
function round(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
}
