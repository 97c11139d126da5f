import { autonomyDays, type Bank, type WearOfYear, wearOfYear } from '@wintergap/battery';
import { bankSettings } from '@wintergap/site';
import { type Ledger, yearSum } from '@wintergap/tally';
import type { BareYear, YearResult } from '../year-result.js';
import { autonomyQuestion, monthMean } from './dark-season.js';

/** What a year does to its bank, and what the bank can do in the dark months. */
export interface BankFacts {
  wear: WearOfYear;
  /** Water that gassing takes from the whole bank, L; 0 for sealed and lithium cells. */
  waterL: number;
  /** The bank's coldest hour of the year, the lowest air of that day, and what cold makes unreachable then at the load of the darkest month. */
  coldest: { hour: number; bankC: number; outdoorLowestC: number; unreachableWh: number };
  /** How near the electrolyte came to freezing; `null` for cells that do not freeze. */
  freezing: { marginK: number; hour: number; hours: number } | null;
  /** Days the load of the darkest month is carried without sun or engine, at its bank temperature. */
  autonomy: { fromFull: number; fromTypical: number; typicalState: number };
  /** The longest run of days whose sun could not carry that day's load, in the order of the year. */
  dullRun: { firstDay: number; days: number };
  /** Longest time without a full charge, days, and the day of the year it ends. */
  longestSinceFull: { days: number; endDay: number };
}

/** What a year's cycles and warmth take from its bank. */
export const bankWear = ({ site, ledger }: Pick<BareYear, 'site' | 'ledger'>): WearOfYear =>
  wearOfYear(ledger.stateOfCharge, ledger.bankC, bankSettings(site.bank));

/** Works out the bank's facts from a settled year. Not needed for the ledger: call it when they are to be shown. */
export function bankFacts({ site, plant, ledger, weather, summary }: YearResult): BankFacts {
  const { bank } = plant;
  const { month } = summary.darkSeason;
  const typicalState = monthMean(ledger.stateOfCharge, month);
  const question = autonomyQuestion(plant, ledger.bankC, month);
  let coldestHour = 0;
  for (let h = 0; h < ledger.bankC.length; h++) if (ledger.bankC[h]! < ledger.bankC[coldestHour]!) coldestHour = h;
  const coldestC = ledger.bankC[coldestHour]!;
  const coldestDay = Math.floor(coldestHour / 24);
  const amps = bank.dischargeAmps(question.averageLoadW, 0.5, coldestC);
  const longest = longestSinceFull(ledger.daysSinceFull);
  return {
    wear: bankWear({ site, ledger }),
    waterL: bank.waterLossGrams(yearSum(ledger.gassingAh)) / 1000,
    coldest: {
      hour: coldestHour,
      bankC: coldestC,
      outdoorLowestC: Math.min(...weather.airC.subarray(coldestDay * 24, coldestDay * 24 + 24)),
      unreachableWh: storedOutOfReach(bank, coldestC, amps) - storedOutOfReach(bank, 25, amps),
    },
    freezing: freezingOf(bank, ledger),
    autonomy: {
      fromFull: autonomyDays(bank, question),
      fromTypical: autonomyDays(bank, { ...question, fromState: typicalState }),
      typicalState,
    },
    dullRun: longestDullRun(plant.acW, plant.dcW, ledger.arrayAvailableWh),
    longestSinceFull: longest,
  };
}

/** What of the bank's charge a temperature and a current leave out of reach, Wh. */
function storedOutOfReach(bank: Bank, tempC: number, amps: number): number {
  return bank.storedWh(Math.max(bank.reachableEmpty(tempC, amps), bank.lowestState));
}

/** Smallest distance of the bank's temperature from the freezing point at its charge, and the hours below it. */
export function freezingOf(bank: Bank, ledger: Ledger): BankFacts['freezing'] {
  let marginK = Number.POSITIVE_INFINITY;
  let hour = 0;
  let hours = 0;
  for (let h = 0; h < ledger.bankC.length; h++) {
    const bankC = ledger.bankC[h]!;
    // No electrolyte freezes above 0 degC: such an hour is at least as far from it as it is warm.
    if (bankC > 0 && bankC >= marginK) continue;
    const above = bankC - bank.freezingC(ledger.lowestStateOfCharge[h]!);
    if (above < 0) hours++;
    if (above < marginK) {
      marginK = above;
      hour = h;
    }
  }
  return Number.isFinite(marginK) ? { marginK, hour, hours } : null;
}

/** Runs past New Year count as one; the year is gone round twice for them. */
function longestDullRun(acW: Float64Array, dcW: Float64Array, availableWh: Float64Array): BankFacts['dullRun'] {
  let best = { firstDay: 0, days: 0 };
  let run = 0;
  for (let i = 0; i < 2 * 365 && run < 365; i++) {
    const day = i % 365;
    let balance = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) balance += availableWh[h]! - acW[h]! - dcW[h]!;
    run = balance < 0 ? run + 1 : 0;
    if (run > best.days) best = { firstDay: (i - run + 1) % 365, days: run };
  }
  return best;
}

/** Longest time without a full charge, and the day it ends. */
export function longestSinceFull(daysSinceFull: Float64Array): BankFacts['longestSinceFull'] {
  let hour = 0;
  for (let h = 0; h < daysSinceFull.length; h++) if (daysSinceFull[h]! > daysSinceFull[hour]!) hour = h;
  return { days: daysSinceFull[hour]!, endDay: Math.floor(hour / 24) };
}
