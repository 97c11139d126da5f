import { exceededLimits, PreparedCache, siteLimits } from '@wintergap/year';
import type { NamedSite } from './common-wish.js';

/** Names of the designs that exceed a calculated limit: they are shown, and never recommended. */
export function overLimits(designs: readonly NamedSite[], prepared: PreparedCache = new PreparedCache()): string[] {
  const over = designs.filter(({ site }) => exceededLimits(siteLimits(site, prepared)).length > 0);
  return over.map(({ name }) => name);
}
