import {
  type Chemistry,
  cellLimitsOf,
  cellsInSeries,
  checkCycleTable,
  chemistryDefaults,
  type LabelPoint,
  rateWeightOf,
  setPointOfCell,
} from '@wintergap/battery';
import { hoursPerYear, OutOfRangeError } from '@wintergap/ground';
import type * as z from 'zod';

/** What the rules ask of a bank of any chemistry. */
interface WrittenBank {
  chemistry: Chemistry;
  voltage: number;
  capacity: number;
  atRate: number;
  otherLabel?: LabelPoint | undefined;
  absorption?: number | undefined;
  float?: number | undefined;
  equalise?: { voltage?: number | undefined } | undefined;
  compensation?: number | undefined;
  tailCurrent?: number | undefined;
  age: number;
  calendarLife?: number | undefined;
  cycleLife?: { depth: number; cycles: number }[] | undefined;
}

/** Calendar lives after which a fifth of the label would be left, the least that is counted: older banks would all be alike. */
const oldestLives = 4;

/** What has to fit together between the keys of a bank: cells, set points, label and tables. */
export function checkBank(bank: WrittenBank, context: z.RefinementCtx): void {
  const report = (path: PropertyKey[], message: string) => context.addIssue({ code: 'custom', path, message });
  checkSetPoints(bank, report);
  const { capacity, atRate, otherLabel, tailCurrent, cycleLife, age, calendarLife } = bank;
  const { mostTailRate } = cellLimitsOf(bank.chemistry);
  if (tailCurrent !== undefined && tailCurrent > mostTailRate * capacity) {
    report(
      ['tailCurrent'],
      `found ${tailCurrent} A, expected 0 A to ${plain(mostTailRate * capacity)} A, ${plain(mostTailRate * 100)} % of ${capacity} Ah an hour; usual is ${plain(chemistryDefaults[bank.chemistry].tailRate * capacity)} A`,
    );
  }
  if (otherLabel)
    reportRefusal(['capacity'], () => rateWeightOf({ capacityAh: capacity, atRateH: atRate }, otherLabel));
  const life = calendarLife ?? chemistryDefaults[bank.chemistry].calendarLifeYears * hoursPerYear;
  if (age > oldestLives * life) {
    report(
      ['age'],
      `found ${plain(age / hoursPerYear)} years, expected at most ${plain((oldestLives * life) / hoursPerYear)}, ${oldestLives} times the calendar life of ${plain(life / hoursPerYear)} years: nothing is known of a bank that is older`,
    );
  }
  if (cycleLife) reportRefusal(['cycleLife'], () => checkCycleTable(cycleLife));

  function reportRefusal(path: PropertyKey[], check: () => void): void {
    try {
      check();
    } catch (error) {
      if (!(error instanceof OutOfRangeError)) throw error;
      report(path, error.message);
    }
  }
}

function checkSetPoints(bank: WrittenBank, report: (path: PropertyKey[], message: string) => void): void {
  const { chemistry, voltage, absorption, float, compensation } = bank;
  const { cellV, absorptionCellV } = chemistryDefaults[chemistry];
  const cells = cellsInSeries(chemistry, voltage);
  if (cells === null) {
    const nearest = Math.max(1, Math.round(voltage / cellV));
    report(
      ['voltage'],
      `found ${voltage} V, expected a multiple of the ${cellV} V of one cell, such as ${plain(nearest * cellV)} V`,
    );
    return;
  }
  const { leastSetV, mostSetV, leastCompensationVPerK } = cellLimitsOf(chemistry);
  const equalise = bank.equalise?.voltage;
  const setPoints: [path: PropertyKey[], volts: number | undefined][] = [
    [['absorption'], absorption],
    [['float'], float],
    [['equalise', 'voltage'], equalise],
  ];
  for (const [path, volts] of setPoints) {
    const ofCell = volts === undefined ? leastSetV : setPointOfCell(volts, cells);
    if (ofCell >= leastSetV && ofCell <= mostSetV) continue;
    report(
      path,
      `found ${volts} V, expected ${plain(leastSetV * cells)} V to ${plain(mostSetV * cells)} V: ${leastSetV} to ${mostSetV} V for each of ${cells} cells`,
    );
  }
  const absorptionV = absorption === undefined ? absorptionCellV : setPointOfCell(absorption, cells);
  const written = absorption === undefined ? ', which is usual' : '';
  const found = `${plain(absorptionV * cells)} V${written}`;
  if (float !== undefined && setPointOfCell(float, cells) > absorptionV) {
    report(['float'], `found ${float} V, expected no more than the absorption voltage, ${found}`);
  }
  if (equalise !== undefined && setPointOfCell(equalise, cells) < absorptionV) {
    report(['equalise', 'voltage'], `found ${equalise} V, expected no less than the absorption voltage, ${found}`);
  }
  const least = leastCompensationVPerK * cells;
  if (compensation !== undefined && compensation < least) {
    report(
      ['compensation'],
      `found ${compensation} V/K, expected ${plain(least)} V/K to 0: ${leastCompensationVPerK} V/K for each of ${cells} cells`,
    );
  }
}

/** A number without the crumbs of its last digits: 0.57 times a hundred is not quite 57. */
export const plain = (value: number): string => String(Number(value.toPrecision(6)));
