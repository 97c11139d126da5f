import { type Costs, costsFor } from '@wintergap/seasonal';
import type { Site } from '@wintergap/site';
import type { CommonRun, CommonWish } from '../common/common-wish.js';
import { runDesigns } from '../common/run-designs.js';
import { type DesignOutcome, type Outcome, outcomeOf } from '../outcome.js';
import { rerunOf } from '../rerun.js';
import { type CabinetChoice, cabinetChoices, cabinetTrials } from './cabinet-weights.js';
import { type ChargerSizes, chargerSizes, chargerTrials } from './charger-sizes.js';
import { type EffectWeight, effectTrials, effectWeights } from './effect-weights.js';
import { type LoadWeight, loadTrials, loadWeights } from './load-weights.js';

/** What the engine takes as it runs. */
export interface RunningPrices {
  perLitre: number;
  /** Service; 0 where the site file has no price of it. */
  perHour: number;
  currency: string | null;
}

/** What so many litres and hours cost, in the money of a site's prices. */
export const runningCost = (
  { perLitre, perHour }: RunningPrices,
  { fuelLitres, hours }: { fuelLitres: number; hours: number },
): number => fuelLitres * perLitre + hours * perHour;

function runningPrices(site: Site, costs: Costs | null): RunningPrices | null {
  const perLitre = site.generator?.fuel.price;
  if (perLitre === undefined) return null;
  const engine = costs && costsFor(site, costs).engine;
  return { perLitre, perHour: engine?.servicePerH ?? 0, currency: site.costs?.currency ?? null };
}

/** What single things weigh in a design's years, each found by running the years again. */
export interface SiteWeights {
  siteName: string;
  /** The common years that engine hours, starts, fuel and dark load are means of. */
  weather: CommonRun['weather'];
  /** The month with the least sun for the load, 1 for January: lowest charges and shares are those of it. */
  darkMonth: number;
  base: Outcome;
  /** Prices of what the engine takes; `null` without a price of its fuel. */
  running: RunningPrices | null;
  loads: LoadWeight[];
  effects: EffectWeight[];
  charger: ChargerSizes | null;
  cabinet: CabinetChoice[] | null;
}

/**
 * Weighs loads, effects, charger and cabinet of one design, over the same weather years for each.
 *
 * @param costs the site's prices; `null` without any
 * @throws SiteError or WeatherError as the year itself does
 */
export async function weighSite(design: Site, wish: CommonWish = {}, costs: Costs | null = null): Promise<SiteWeights> {
  const rerun = rerunOf(undefined, wish.prepared);
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
    running: runningPrices(design, costs),
    loads: loadWeights(base, yearsOf),
    effects: effectWeights(base, yearsOf),
    charger: chargerSizes(base, yearsOf),
    cabinet: cabinetChoices(base, yearsOf, costs),
  };
}
