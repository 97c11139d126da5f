import type { Site } from '@wintergap/site';
import { type Outcome, outcomeOf } from '../outcome.js';
import { rerunOf } from '../rerun.js';
import { type CabinetChoice, cabinetChoices, cabinetRuns } from './cabinet-weights.js';
import { type ChargerSizes, chargerRuns, chargerSizes } from './charger-sizes.js';
import { type EffectWeight, effectWeights, presentEffects } from './effect-weights.js';
import { type LoadWeight, loadRuns, loadWeights } from './load-weights.js';

/** What single things weigh in a design's year, each found by running the year again. */
export interface SiteWeights {
  siteName: string;
  /** The month with the least sun for the load, 1 for January: lowest charges and shares are those of it. */
  darkMonth: number;
  base: Outcome;
  loads: LoadWeight[];
  effects: EffectWeight[];
  charger: ChargerSizes | null;
  cabinet: CabinetChoice[] | null;
}

/**
 * Weighs loads, effects, charger and cabinet of one design.
 *
 * @param onRun told after every year how many of how many are done
 * @throws SiteError or WeatherError as the year itself does
 */
export function weighSite(design: Site, onRun: (done: number, of: number) => void = () => {}): SiteWeights {
  let done = 0;
  let of = 1 + loadRuns(design) + chargerRuns(design) + cabinetRuns(design);
  const rerun = rerunOf(() => onRun(++done, of));
  const base = rerun(design);
  of += presentEffects(base).length;
  return {
    siteName: design.name,
    darkMonth: base.summary.darkSeason.month,
    base: outcomeOf(base),
    loads: loadWeights(base, rerun),
    effects: effectWeights(base, rerun),
    charger: chargerSizes(base, rerun),
    cabinet: cabinetChoices(base, rerun),
  };
}
