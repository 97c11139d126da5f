import { type Costs, labelledKWh, lifeCycleOfYear, ratedKW, readCosts } from '@wintergap/seasonal';
import type { Site, SiteFile } from '@wintergap/site';
import { type PreparedCache, simulateSite, type YearResult } from '@wintergap/year';
import { sectionError } from '../section-error.js';

/**
 * The prices behind `least: cost`.
 *
 * @throws SiteError naming the keys without which no life-cycle cost can be worked out
 */
export function readSizeCosts(site: SiteFile, prepared: PreparedCache): Costs {
  const costs = readCosts(site);
  const missing = costs ? lifeCycleOfYear(simulateSite(site.base, prepared), costs).missing : ['a costs section'];
  if (costs && missing.length === 0) return costs;
  throw sectionError(
    site,
    ['size', 'least'],
    `least: cost needs ${missing.join(', ')}; expected such as costs: { years: 20, array: 900 /kW, bank: 180 /kWh, engine: { price: 1500, life: 2000 h } }`,
  );
}

/** Life-cycle cost of a design by its simulated year, less the same for every design. */
export function costOf(year: YearResult, costs: Costs): number {
  return lifeCycleOfYear(year, costs).lifeCycle!.total;
}

/** Room for rounding in the bound below. */
const roundingShare = 1e-9;

/**
 * What the life-cycle cost of a design cannot fall below, known before it is simulated: array and bank as bought, less
 * the most that a bank and an engine can be worth at the end. Fuel, service and replacements only add.
 */
export function leastCost(site: Site, { arrayPerKW, bankPerKWh, engine, years, discountRate }: Costs): number {
  const endWorth = (1 + discountRate) ** -years!;
  const array = ratedKW(site) * arrayPerKW!;
  const bank = labelledKWh(site) * bankPerKWh!;
  // At a rate of 0 or more an engine is never worth more at the end than was paid for it; below 0 it may seem so.
  const engineGain = discountRate < 0 && engine ? engine.price * endWorth : 0;
  return array + bank * (1 - endWorth) - engineGain - roundingShare * (array + bank * (1 + endWorth) + engineGain);
}
