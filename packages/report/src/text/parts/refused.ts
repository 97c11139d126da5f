import { refusedInCold, refusedInHeat, type YearResult } from '@wintergap/year';
import { figure } from '../../words/figures.js';

/** A smaller share of what is thrown away is not worth a second reason. */
const secondReason = 0.05;

/** What keeps a bank from being charged besides being full, as words for the bank and an end for the sentence. */
export function refusedText({ plant, ledger, summary }: YearResult): { bank: string; sentence: string } {
  const reasons = Object.entries({ cold: refusedInCold(plant, ledger), hot: refusedInHeat(ledger) }).filter(
    ([, { sunWh }]) => sunWh / 1000 > secondReason * summary.throttle.kWh,
  );
  return {
    bank: ['full', ...reasons.map(([word]) => `too ${word}`)].join(' or '),
    sentence: reasons
      .map(([word, { sunWh }]) => `, ${figure(sunWh / 1000)} kWh of it because the bank is too ${word} to charge`)
      .join(''),
  };
}
