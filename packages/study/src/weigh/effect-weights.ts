import type { YearResult } from '@wintergap/year';
import { type DesignOutcome, heavierFirst, type Weight, weightOf } from '../outcome.js';
import { type Effect, effects, isPresent } from './effects.js';
import { leanMonths, sumInMonths } from './lean-months.js';
import { withTies } from './ties.js';
import type { Trial } from './trials.js';

/** One effect and what the year would be without it. */
export interface EffectWeight {
  name: string;
  meaning: string;
  /** Array energy it takes in the months in which the engine runs or load stays dark, kWh: exact, where hours are lumpy. */
  arrayKWh: number;
  weight: Weight;
  /** Other effects that the years do not tell apart from it. */
  tiedWith: string[];
}

/** The effects a design has anything of, in the order of the energy's way. */
export function presentEffects({ site, arrays }: YearResult): Effect[] {
  const snowKnown = arrays.some(({ snowShare }) => snowShare !== null);
  return effects.filter((effect) => (effect.ofSnow ? snowKnown : true) && isPresent(effect, site));
}

/** The designs that `effectWeights` asks for. */
export const effectTrials = (base: YearResult): Trial[] =>
  presentEffects(base).map((effect) => ({ id: trialId(effect), site: effect.without(base.site) }));

const trialId = ({ name }: Effect) => `effect ${name}`;

/**
 * What each effect weighs, heaviest first: the years are run again with it alone left out. Effects hide one another
 * (light behind the trees is not lost to snow as well), so the weights do not add up.
 */
export function effectWeights(base: DesignOutcome, yearsOf: (id: string) => DesignOutcome): EffectWeight[] {
  const months = leanMonths([base.own]);
  const offered = ({ ledger }: YearResult) => sumInMonths(ledger.arrayAvailableWh, months) / 1000;
  const weighed = presentEffects(base.own).map((effect) => {
    const without = yearsOf(trialId(effect));
    const thing = {
      name: effect.name,
      meaning: effect.meaning,
      arrayKWh: offered(without.own) - offered(base.own),
      weight: weightOf(base, without, base.own.summary.darkSeason.month),
    };
    return { thing, yearsWithout: without.common };
  });
  return withTies(weighed.sort((one, other) => heavierFirst(one.thing.weight, other.thing.weight)));
}
