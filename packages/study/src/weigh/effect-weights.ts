import type { Site } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { heavierFirst, outcomeOf, type Weight, weightOf } from '../outcome.js';
import { type Effect, effects, isPresent } from './effects.js';
import { leanMonths, sumInMonths } from './lean-months.js';

/** One effect and what the year would be without it. */
export interface EffectWeight {
  name: string;
  meaning: string;
  /** Array energy it takes in the months in which the engine runs or load stays dark, kWh: exact, where hours are lumpy. */
  arrayKWh: number;
  weight: Weight;
}

/** The effects a design has anything of, in the order of the energy's way. */
export function presentEffects({ site, arrays }: YearResult): Effect[] {
  const snowKnown = arrays.some(({ snowShare }) => snowShare !== null);
  return effects.filter((effect) => (effect.name === 'snow on the array' ? snowKnown : isPresent(effect, site)));
}

/**
 * What each effect weighs, heaviest first: the year is run again with it alone left out. Effects hide one another
 * (light behind the trees is not lost to snow as well), so the weights do not add up.
 */
export function effectWeights(base: YearResult, rerun: (site: Site) => YearResult): EffectWeight[] {
  const withIt = outcomeOf(base);
  const months = leanMonths([base]);
  const offered = ({ ledger }: YearResult) => sumInMonths(ledger.arrayAvailableWh, months) / 1000;
  return presentEffects(base)
    .map((effect) => {
      const without = rerun(effect.without(base.site));
      return {
        name: effect.name,
        meaning: effect.meaning,
        arrayKWh: offered(without) - offered(base),
        weight: weightOf(withIt, outcomeOf(without, base.summary.darkSeason.month)),
      };
    })
    .sort((one, other) => heavierFirst(one.weight, other.weight));
}
