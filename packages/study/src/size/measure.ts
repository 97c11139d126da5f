import { billOf, type Costs, costsFor, lifeCycleOfYear, readCosts } from '@wintergap/seasonal';
import type { Site, SiteFile } from '@wintergap/site';
import { type PreparedCache, simulateSite, type YearResult } from '@wintergap/year';
import type { DesignAxis } from '../design/axis.js';
import { unpricedApart } from '../design/unpriced-apart.js';
import { sectionError } from '../section-error.js';

/**
 * The prices behind `least: cost`.
 *
 * @throws SiteError naming the keys without which no life-cycle cost can be worked out
 */
export function readSizeCosts(site: SiteFile, axes: readonly DesignAxis[], prepared: PreparedCache): Costs {
  const costs = readCosts(site);
  const missing = costs ? lifeCycleOfYear(simulateSite(site.base, prepared), costs).missing : ['a costs section'];
  const apart = costs ? unpricedApart(site, axes, costs) : [];
  if (costs && missing.length === 0 && apart.length === 0) return costs;
  if (missing.length === 0) {
    const message = `least: cost needs a price for ${apart.join(', ')}, which some of these designs have and others have not`;
    throw sectionError(site, ['size', 'least'], message);
  }
  throw sectionError(
    site,
    ['size', 'least'],
    `least: cost needs ${missing.join(', ')}; expected such as costs: { years: 20, array: 900 /kW, bank: 180 /kWh, engine: { price: 1500, life: 2000 h } }`,
  );
}

/** Life-cycle cost of a design by its simulated year; endless where it has a part without a price that the base has not. */
export function costOf(year: YearResult, costs: Costs): number {
  return lifeCycleOfYear(year, costs).lifeCycle?.total ?? Number.POSITIVE_INFINITY;
}

/** Room for rounding in the bound below. */
const roundingShare = 1e-9;

/**
 * What the life-cycle cost of a design cannot fall below, known before it is simulated: its bill without the engine, less
 * the most that things with a life can be worth at the end. Fuel, service, upkeep and replacements only add.
 */
export function leastCost(site: Site, costs: Costs): number {
  const { years, discountRate } = costs;
  const endWorth = (1 + discountRate) ** -years!;
  let bound = 0;
  let sizes = 0;
  for (const { part, price, livesYears } of billOf(site, costs)) {
    if (part === 'engine' || price === null) continue;
    const canBeLeft = part === 'bank' || livesYears !== null;
    bound += canBeLeft ? price * (1 - endWorth) : price;
    sizes += canBeLeft ? price * (1 + endWorth) : price;
  }
  // At a rate of 0 or more an engine is never worth more at the end than was paid for it; below 0 it may seem so.
  const { engine } = costsFor(site, costs);
  const engineGain = discountRate < 0 && engine ? engine.price * endWorth : 0;
  return bound - engineGain - roundingShare * (sizes + engineGain);
}
