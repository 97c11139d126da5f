import { OutOfRangeError } from '@wintergap/ground';
/** A module's data sheet at standard test conditions (1000 W/m2, 25 degC cell, air mass 1.5). */
export interface ModuleSheet {
  /** Rated power, W. Left out: vmpV x impA. */
  powerW?: number;
  vmpV: number;
  impA: number;
  vocV: number;
  iscA: number;
  /** Cells in series between the terminals; a half-cut module with 144 half cells has 72. */
  cells: number;
  /** Change of maximum power, fraction per K, e.g. -0.0039. A check on the solved curve, not an input to it. */
  powerPerK?: number;
  /** Change of open-circuit voltage, fraction per K, e.g. -0.0031. */
  vocPerK: number;
  /** Change of short-circuit current, fraction per K, e.g. 0.0005. */
  iscPerK: number;
  /** Nominal operating cell temperature, degC. */
  noctC?: number;
  /** Outline of the module, m2. */
  areaM2?: number;
  /** Left out: crystalline. */
  technology?: 'crystalline' | 'thin-film';
}

const percentHint = 'as a fraction, so that -0.31 % per K is -0.0031';

/** Stated power and vmpV x impA are both rounded on a sheet; further apart than this one of them is wrong. */
const powerTolerance = 0.03;

/** Throws a RangeError naming the first value that cannot belong to one module. */
export function checkModuleSheet(sheet: ModuleSheet): void {
  within(sheet.vocV, 'vocV', 0.3, 1000);
  within(sheet.iscA, 'iscA', 0.01, 100);
  within(sheet.vmpV, 'vmpV', 0.1, 1000);
  within(sheet.impA, 'impA', 0.01, 100);
  within(sheet.cells, 'cells', 1, 1000);
  within(sheet.vocPerK, 'vocPerK', -0.006, -0.001, percentHint);
  within(sheet.iscPerK, 'iscPerK', -0.001, 0.003, percentHint);
  if (sheet.powerPerK !== undefined) within(sheet.powerPerK, 'powerPerK', -0.008, -0.0005, percentHint);
  if (sheet.noctC !== undefined) within(sheet.noctC, 'noctC', 30, 70);
  if (sheet.areaM2 !== undefined) within(sheet.areaM2, 'areaM2', 0.005, 10);

  // A curve that bends one way only (concave) has its maximum power above half of each end point.
  const { vmpV, impA, vocV, iscA, powerW } = sheet;
  if (!(vmpV > 0.5 * vocV && vmpV < vocV)) {
    throw new OutOfRangeError(`vmpV must lie between half of vocV and vocV (${vocV / 2} to ${vocV} V), got ${vmpV}`);
  }
  if (!(impA > 0.5 * iscA && impA < iscA)) {
    throw new OutOfRangeError(`impA must lie between half of iscA and iscA (${iscA / 2} to ${iscA} A), got ${impA}`);
  }
  const fillFactor = (vmpV * impA) / (vocV * iscA);
  if (fillFactor < 0.4 || fillFactor > 0.9) {
    throw new OutOfRangeError(
      `fill factor vmpV x impA / (vocV x iscA) must be 0.4 to 0.9, got ${fillFactor.toFixed(3)}: check vmpV and impA`,
    );
  }
  if (powerW !== undefined && !(Math.abs(powerW / (vmpV * impA) - 1) <= powerTolerance)) {
    throw new OutOfRangeError(
      `powerW must agree with vmpV x impA (${(vmpV * impA).toFixed(1)} W) within ${100 * powerTolerance} %, got ${powerW}`,
    );
  }

  const perCellV = vocV / sheet.cells;
  const [low, high] = sheet.technology === 'thin-film' ? [0.3, 3] : [0.45, 0.8];
  if (perCellV < low || perCellV > high) {
    throw new OutOfRangeError(
      `vocV per cell must be ${low} to ${high} V, got ${perCellV.toFixed(3)} with ${sheet.cells} cells: ` +
        'cells counts those in series (a half-cut module with 144 half cells has 72)',
    );
  }
  if (sheet.areaM2 !== undefined && vmpV * impA > 350 * sheet.areaM2) {
    throw new OutOfRangeError(
      `areaM2 must leave the module below 35 % efficiency (${((vmpV * impA) / 350).toFixed(2)} m2 or more), got ${sheet.areaM2}`,
    );
  }
}

function within(value: number, name: string, low: number, high: number, hint?: string): void {
  if (!(value >= low && value <= high)) {
    throw new OutOfRangeError(`${name} must be ${low} to ${high}${hint ? `, ${hint}` : ''}, got ${value}`);
  }
}
