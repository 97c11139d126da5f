import { daysPerYear, monthSpan } from '@wintergap/ground';
import type { YearResult } from '@wintergap/year';
import type { HandMonth, HandString } from './array.js';
import { type HandAnswer, handMethod } from './method.js';

/** What a practitioner chooses before the hand method starts. */
export interface HandSettings {
  autonomyDays: number;
  /** Array-to-load ratio in the dullest month. */
  ratio: number;
  /** Share lost between the module's data sheet and the bank. */
  losses: number;
  /** Spare capacity of the bank, 1 or more. */
  margin: number;
}

/** Lead-acid lasts when a usual day takes no more than this: common practice, no source. */
const dailyDischarge = 0.2;
/** Share of its capacity at which a bank counts as worn out, IEEE 1013. */
const endOfLife = 0.8;

/** What the hand method says for a place, beside what was simulated there. */
export interface HandForYear extends HandAnswer {
  settings: HandSettings;
  /** Rated power of the array by hand, kW; `null` when the dullest month has no sun. */
  ratedKW: number | null;
  /** The bank by hand in the terms of the design's label: capacity at the label's rate, Ah, for the same discharge. */
  labelAh: number;
  /** Lowest daily mean temperature of the bank that went into it, degC. */
  lowestC: number;
}

/**
 * Applies the hand method to the load, the sun on the plane and the bank's cold of a simulated year. With several
 * arrays the sun is their mean by rated power, and strings are those of the first array. The bank is sized for the month
 * in which the days without sun are counted, the array for the one that its plane finds darkest.
 *
 * @returns `null` for a design without array or load, where there is nothing to size
 */
export function handForYear(year: YearResult, settings: HandSettings): HandForYear | null {
  const { site, plant, ledger, summary } = year;
  const array = site.arrays.find(({ strings }) => strings > 0);
  const months = monthsOf(year);
  if (!array || months.every(({ dailyLoadAh }) => dailyLoadAh === 0)) return null;
  const { module, inSeries, controller } = array;
  const stringW = inSeries * module.vmp * module.imp;
  const string: HandString =
    controller.kind === 'direct'
      ? { connection: 'direct', operatingA: module.imp }
      : { connection: 'maximum-power', powerW: stringW, busV: site.bank.voltage };
  const lowestC = lowestDailyMean(ledger.bankC);
  const { leadAcidSizing } = plant.bank.traits;
  const darkest = months[summary.darkSeason.month - 1]!;
  const answer = handMethod({
    array: { months, ratio: settings.ratio, losses: settings.losses, string },
    bank: {
      dailyLoadAh: darkest.dailyLoadAh,
      autonomyDays: settings.autonomyDays,
      deepestDischarge: Math.min(Math.max(0.05, 1 - plant.bank.floor), 1),
      dailyDischarge: leadAcidSizing ? dailyDischarge : null,
      endOfLife,
      lowestC: leadAcidSizing ? Math.max(-60, lowestC) : null,
      margin: settings.margin,
    },
  });
  return {
    ...answer,
    settings,
    ratedKW: answer.array ? (answer.array.exactStrings * stringW) / 1000 : null,
    labelAh:
      (answer.bank.capacityAh * plant.bank.ampereHoursIn(site.bank.atRate)) /
      plant.bank.ampereHoursIn(answer.bank.dischargeTimeH),
    lowestC,
  };
}

function monthsOf({ site, plant, summary }: YearResult): HandMonth[] {
  return summary.array.months.map(({ planeKWhPerM2 }, m) => {
    const { fromHour, toHour, days } = monthSpan(m);
    let wh = 0;
    for (let h = fromHour; h < toHour; h++)
      wh += plant.inverterInputW[h]! + plant.converterInputW[h]! + plant.ownUseW[h]!;
    return { dailyLoadAh: wh / days / site.bank.voltage, sunHours: planeKWhPerM2 / days };
  });
}

function lowestDailyMean(hourlyC: Float64Array): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let day = 0; day < daysPerYear; day++) {
    let sum = 0;
    for (let h = day * 24; h < day * 24 + 24; h++) sum += hourlyC[h]!;
    lowest = Math.min(lowest, sum / 24);
  }
  return lowest;
}
