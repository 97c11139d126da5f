import { type Costs, unpricedNames } from '@wintergap/seasonal';
import { changedDesign, type Site, SiteError, type SiteFile } from '@wintergap/site';
import { type DesignAxis, variantAxis } from './axis.js';

/**
 * Names of things without a price that some designs of a grid have and others have not: with them no cost tells which
 * design is cheaper. What all have, an inverter say, leaves the order as it is.
 */
export function unpricedApart(site: SiteFile, axes: readonly DesignAxis[], costs: Costs): string[] {
  const sets = [site.base, ...changedWhole(site, axes)].map((design) => new Set(unpricedNames(design, costs)));
  const all = new Set(sets.flatMap((names) => [...names]));
  return [...all].filter((name) => sets.some((names) => !names.has(name)));
}

/** The base with each value of an axis that puts one thing in another's place: a variant, or a mapping of keys. */
function changedWhole(site: SiteFile, axes: readonly DesignAxis[]): Site[] {
  const whole = axes.flatMap(({ path, values }) =>
    path === variantAxis ? [] : values.filter((value) => typeof value === 'object').map((value) => ({ path, value })),
  );
  const variants = axes
    .filter(({ path }) => path === variantAxis)
    .flatMap(({ values }) => values.flatMap((name) => site.variants.get(String(name)) ?? []));
  const changed = whole.flatMap(({ path, value }) => {
    try {
      return [changedDesign(site, { [path]: value })];
    } catch (error) {
      // A design that cannot be built is told as such when its turn comes.
      if (error instanceof SiteError) return [];
      throw error;
    }
  });
  return [...variants, ...changed];
}
