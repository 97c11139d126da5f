import type { NamedYear } from '@wintergap/report';
import type { SiteFile } from '@wintergap/site';
import { type PreparedCache, simulateSite } from '@wintergap/year';

/** The years of a site's base design and its variants, the base first, with what they share computed once. */
export function runDesigns(site: SiteFile, prepared: PreparedCache): NamedYear[] {
  return [['base', site.base] as const, ...site.variants].map(([name, design]) => ({
    name,
    result: simulateSite(design, prepared),
  }));
}
