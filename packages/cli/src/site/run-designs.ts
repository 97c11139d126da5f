import type { NamedYear } from '@wintergap/report';
import type { SiteFile } from '@wintergap/site';
import { designsOf } from '@wintergap/study';
import { type PreparedCache, simulateSite } from '@wintergap/year';

/** The years of a site's base design and its variants, the base first, with what they share computed once. */
export function runDesigns(file: SiteFile, prepared: PreparedCache): NamedYear[] {
  return designsOf(file).map(({ name, site }) => ({ name, result: simulateSite(site, prepared) }));
}
