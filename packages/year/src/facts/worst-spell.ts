import { dateOfDay, daysPerYear, hoursPerYear, mustBeWhole } from '@wintergap/ground';
import type { BareYear } from '../year-result.js';
import { startReason } from './start-reason.js';

/** One day of a spell, hour by hour summed from the ledger. Energies in kWh, shares of charge 0 to 1. */
export interface SpellDay {
  /** `MM-DD`. */
  date: string;
  /** Global irradiation on the horizontal, kWh/m2. */
  sunKWhPerM2: number;
  /** What the arrays put on the bus. */
  arrayKWh: number;
  thrownAwayKWh: number;
  /** Load asked for, AC and DC; `darkKWh` of it stayed dark. */
  loadKWh: number;
  darkKWh: number;
  /** State of charge at six in the evening, and the lowest of the day. */
  eveningCharge: number;
  lowestCharge: number;
  /** Lowest bank temperature of the day, degC. */
  bankC: number;
  engineHours: number;
  /** Why the engine was started, one for each start. */
  starts: string[];
}

/** The days of a year in which sun over load is least. */
export interface WorstSpell {
  /** First day, 0 for 1 January; the spell may run over the end of the year. */
  firstDay: number;
  days: SpellDay[];
  sunKWhPerM2: number;
  loadKWh: number;
  engineHours: number;
  darkKWh: number;
}

/** A fortnight. */
export const usualSpellDays = 14;
const eveningHour = 18;
const mostDays = 60;

/**
 * The run of days in which global irradiation over load is least, by the measure of the dark season; without any load the
 * least sun. The first of them if several are equal.
 *
 * @param days 1 to 60
 * @throws OutOfRangeError
 */
export function worstSpell(year: BareYear, days: number = usualSpellDays): WorstSpell {
  mustBeWhole('days', days, 1, mostDays);
  const firstDay = leastSunForLoad(year, days);
  const list = Array.from({ length: days }, (_, i) => dayOf(year, (firstDay + i) % daysPerYear));
  const sum = (of: (day: SpellDay) => number) => list.reduce((total, day) => total + of(day), 0);
  return {
    firstDay,
    days: list,
    sunKWhPerM2: sum(({ sunKWhPerM2 }) => sunKWhPerM2),
    loadKWh: sum(({ loadKWh }) => loadKWh),
    engineHours: sum(({ engineHours }) => engineHours),
    darkKWh: sum(({ darkKWh }) => darkKWh),
  };
}

function leastSunForLoad({ weather, load }: BareYear, days: number): number {
  const sun = new Float64Array(daysPerYear);
  const asked = new Float64Array(daysPerYear);
  for (let h = 0; h < hoursPerYear; h++) {
    const day = Math.floor(h / 24);
    sun[day]! += weather.ghiWm2[h]!;
    asked[day]! += load.acW[h]! + load.dcW[h]!;
  }
  const noLoad = asked.every((wh) => wh === 0);
  let first = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let from = 0; from < daysPerYear; from++) {
    let spellSun = 0;
    let spellLoad = 0;
    for (let day = from; day < from + days; day++) {
      spellSun += sun[day % daysPerYear]!;
      spellLoad += asked[day % daysPerYear]!;
    }
    const ratio = noLoad ? spellSun : spellLoad > 0 ? spellSun / spellLoad : Number.POSITIVE_INFINITY;
    if (ratio < least) {
      least = ratio;
      first = from;
    }
  }
  return first;
}

function dayOf(year: BareYear, day: number): SpellDay {
  const { ledger, weather } = year;
  const from = day * 24;
  const hours = Array.from({ length: 24 }, (_, i) => from + i);
  const kWh = (column: Float64Array) => hours.reduce((sum, h) => sum + column[h]!, 0) / 1000;
  const darkKWh = kWh(ledger.darkWh);
  return {
    date: dateOfDay(day),
    sunKWhPerM2: kWh(weather.ghiWm2),
    arrayKWh: kWh(ledger.arrayUsedWh),
    thrownAwayKWh: kWh(ledger.throttledWh),
    loadKWh: kWh(ledger.acServedWh) + kWh(ledger.dcServedWh) + darkKWh,
    darkKWh,
    eveningCharge: ledger.stateOfCharge[from + eveningHour - 1]!,
    lowestCharge: Math.min(...hours.map((h) => ledger.lowestStateOfCharge[h]!)),
    bankC: Math.min(...hours.map((h) => ledger.bankC[h]!)),
    engineHours: hours.reduce((sum, h) => sum + ledger.generatorH[h]!, 0),
    starts: hours.filter((h) => ledger.starts[h]! > 0).map((h) => startReason(year, h)),
  };
}
