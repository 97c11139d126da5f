import { billOf, type Costs } from '@wintergap/seasonal';
import type { Site } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import { bankAir, bankFacts, type YearResult } from '@wintergap/year';
import { type DesignOutcome, type Outcome, outcomeOf, type Weight, weightOf } from '../outcome.js';
import type { Trial } from './trials.js';

/** One way to house the bank. */
export interface CabinetChoice {
  name: string;
  outcome: Outcome;
  /** What it has more than the design's own, year by year over the common years; `null` for the design's own. */
  difference: Weight | null;
  /** Years to 80 % of the labelled capacity, in use and temperatures of the file's year. */
  bankYears: number;
  /** The bank's price over those years; `null` without a price. */
  wearPerYear: number | null;
  coldestBankC: number;
  warmestBankC: number;
  /** What a cabinet heater draws in the year, kWh. */
  heaterKWh: number;
}

type Cabinet = NonNullable<Site['bank']['cabinet']>;

/** Two inches. */
const moreFoamM = 0.0508;

/** The designs that `cabinetChoices` asks for, the design itself left out. */
export function cabinetTrials(own: YearResult): Trial[] {
  const { site } = own;
  const { cabinet } = site.bank;
  if (!cabinet) return [];
  return changedCabinets(cabinet, bankAir(own)?.neededWPerK ?? null).map(([name, changed]) => ({
    id: trialId(name),
    site: { ...site, bank: { ...site.bank, cabinet: changed } },
  }));
}

const trialId = (name: string) => `cabinet ${name}`;

/**
 * The bank's cabinet as it is, with more and less foam, ventilated, and without its heater's warmth. Foam keeps the bank
 * warm for winter's charge and ages it in summer, air takes both away: hours and years of life stand side by side.
 *
 * @param costs the site's prices, for the yearly cost of the bank's wear; `null` without any
 * @returns the design's own first; `null` where the bank stands in the heated rooms
 */
export function cabinetChoices(
  base: DesignOutcome,
  yearsOf: (id: string) => DesignOutcome,
  costs: Costs | null,
): CabinetChoice[] | null {
  const { site, summary } = base.own;
  const { cabinet } = site.bank;
  if (!cabinet) return null;
  const { month } = summary.darkSeason;
  const choices = changedCabinets(cabinet, bankAir(base.own)?.neededWPerK ?? null).map(([name]) => {
    const years = yearsOf(trialId(name));
    return { ...choiceOf(name, years, month, costs), difference: weightOf(years, base, month) };
  });
  return [choiceOf('as designed', base, month, costs), ...choices];
}

/** @param gasAirWPerK heat that the air against the bank's hydrogen carries out; `null` for cells that make none */
function changedCabinets(cabinet: Cabinet, gasAirWPerK: number | null): [name: string, changed: Cabinet][] {
  const { insulation, heatedBy } = cabinet;
  const changed: [string, Cabinet][] = [];
  if (typeof insulation === 'number') {
    changed.push(['half the heat loss', { ...cabinet, insulation: insulation / 2 }]);
    changed.push(['twice the heat loss', { ...cabinet, insulation: insulation * 2 }]);
  } else {
    changed.push([
      '2 inches more foam',
      { ...cabinet, insulation: { ...insulation, foam: insulation.foam + moreFoamM } },
    ]);
    // The loss is in proportion to the area.
    changed.push(['half the heat loss', { ...cabinet, insulation: { ...insulation, area: insulation.area / 2 } }]);
    changed.push(['half the foam', { ...cabinet, insulation: { ...insulation, foam: insulation.foam / 2 } }]);
  }
  if (gasAirWPerK !== null && gasAirWPerK > cabinet.ventilation) {
    changed.push(['ventilated for gas', { ...cabinet, ventilation: gasAirWPerK }]);
  }
  if (heatedBy !== 'none') {
    const word = heatedBy.kind === 'heater' ? 'without the heater' : 'without the warm room';
    changed.push([word, { ...cabinet, heatedBy: 'none' }]);
  }
  return changed;
}

function choiceOf(name: string, years: DesignOutcome, darkMonth: number, costs: Costs | null): CabinetChoice {
  const { ledger, plant, site, summary } = years.own;
  const bankYears = bankFacts(years.own).wear.yearsTo80;
  const price = costs && billOf(site, costs).find(({ part }) => part === 'bank')!.price;
  const otherOwnUseWh = yearSum(plant.ownUseW);
  return {
    name,
    outcome: outcomeOf(years, darkMonth),
    difference: null,
    bankYears,
    wearPerYear: price === null ? null : price / bankYears,
    coldestBankC: summary.bank.minTemp,
    warmestBankC: summary.bank.maxTemp,
    heaterKWh: plant.heater === null ? 0 : Math.max(0, (yearSum(ledger.ownUseWh) - otherOwnUseWh) / 1000),
  };
}
