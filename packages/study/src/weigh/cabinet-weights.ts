import type { Site } from '@wintergap/site';
import { yearSum } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { type DesignOutcome, type Outcome, outcomeOf } from '../outcome.js';
import type { Trial } from './trials.js';

/** One way to house the bank. */
export interface CabinetChoice {
  name: string;
  outcome: Outcome;
  coldestBankC: number;
  warmestBankC: number;
  /** What a cabinet heater draws in the year, kWh. */
  heaterKWh: number;
}

type Cabinet = NonNullable<Site['bank']['cabinet']>;

/** Two inches. */
const moreFoamM = 0.0508;

/** The designs that `cabinetChoices` asks for, the design itself left out. */
export function cabinetTrials({ site }: YearResult): Trial[] {
  const { cabinet } = site.bank;
  if (!cabinet) return [];
  return changedCabinets(cabinet).map(([name, changed]) => ({
    id: trialId(name),
    site: { ...site, bank: { ...site.bank, cabinet: changed } },
  }));
}

const trialId = (name: string) => `cabinet ${name}`;

/**
 * The bank's cabinet as it is, better insulated, and without or with a heater's warmth.
 *
 * @returns the design's own first; `null` where the bank stands in the heated rooms
 */
export function cabinetChoices(base: DesignOutcome, yearsOf: (id: string) => DesignOutcome): CabinetChoice[] | null {
  const { site, summary } = base.own;
  const { cabinet } = site.bank;
  if (!cabinet) return null;
  const { month } = summary.darkSeason;
  const choices = changedCabinets(cabinet).map(([name]) => choiceOf(name, yearsOf(trialId(name)), month));
  return [choiceOf('as designed', base, month), ...choices];
}

function changedCabinets(cabinet: Cabinet): [name: string, changed: Cabinet][] {
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
  }
  if (heatedBy !== 'none') {
    const word = heatedBy.kind === 'heater' ? 'without the heater' : 'without the warm room';
    changed.push([word, { ...cabinet, heatedBy: 'none' }]);
  }
  return changed;
}

function choiceOf(name: string, years: DesignOutcome, darkMonth: number): CabinetChoice {
  const { ledger, plant, summary } = years.own;
  const otherOwnUseWh = yearSum(plant.ownUseW);
  return {
    name,
    outcome: outcomeOf(years, darkMonth),
    coldestBankC: summary.bank.minTemp,
    warmestBankC: summary.bank.maxTemp,
    heaterKWh: plant.heater === null ? 0 : Math.max(0, (yearSum(ledger.ownUseWh) - otherOwnUseWh) / 1000),
  };
}
