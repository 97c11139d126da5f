import type { Site } from '@wintergap/site';
import type { CommonRun, CommonWish } from '../common/run-designs.js';
import { runDesigns } from '../common/run-designs.js';
import { type DesignOutcome, type Outcome, outcomeOf } from '../outcome.js';
import { rerunOf } from '../rerun.js';
import { type CabinetChoice, cabinetChoices, cabinetTrials } from './cabinet-weights.js';
import { type ChargerSizes, chargerSizes, chargerTrials } from './charger-sizes.js';
import { type EffectWeight, effectTrials, effectWeights } from './effect-weights.js';
import { type LoadWeight, loadTrials, loadWeights } from './load-weights.js';

/** What single things weigh in a design's years, each found by running the years again. */
export interface SiteWeights {
  siteName: string;
  /** The common years that engine hours, starts, fuel and dark load are means of. */
  weather: CommonRun['weather'];
  /** The month with the least sun for the load, 1 for January: lowest charges and shares are those of it. */
  darkMonth: number;
  base: Outcome;
  loads: LoadWeight[];
  effects: EffectWeight[];
  charger: ChargerSizes | null;
  cabinet: CabinetChoice[] | null;
}

/**
 * Weighs loads, effects, charger and cabinet of one design, over the same weather years for each.
 *
 * @param bankPerKWh price of the bank per labelled kWh, for the yearly cost of its wear; `null` when not known
 * @throws SiteError or WeatherError as the year itself does
 */
export async function weighSite(
  design: Site,
  wish: CommonWish = {},
  bankPerKWh: number | null = null,
): Promise<SiteWeights> {
  const rerun = rerunOf();
  const own = rerun(design);
  const trials = [...loadTrials(own), ...effectTrials(own), ...chargerTrials(own), ...cabinetTrials(own)];
  const designs = [{ name: 'base', site: design }, ...trials.map(({ id, site }) => ({ name: id, site }))];
  const { weather, designs: ran } = await runDesigns(designs, wish);
  const base: DesignOutcome = { own, common: ran[0]!.years };
  const places = new Map(trials.map(({ id }, i) => [id, i]));
  const yearsOf = (id: string): DesignOutcome => {
    const place = places.get(id)!;
    return { own: rerun(trials[place]!.site), common: ran[place + 1]!.years };
  };
  return {
    siteName: design.name,
    weather,
    darkMonth: own.summary.darkSeason.month,
    base: outcomeOf(base),
    loads: loadWeights(base, yearsOf),
    effects: effectWeights(base, yearsOf),
    charger: chargerSizes(base, yearsOf),
    cabinet: cabinetChoices(base, yearsOf, bankPerKWh),
  };
}
