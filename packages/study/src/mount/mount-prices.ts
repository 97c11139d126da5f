import type { SiteFile, SiteMount } from '@wintergap/site';

/** Price, upkeep and life of mounts, by kind. */
export type MountPrices = ReadonlyMap<SiteMount['kind'], Pick<SiteMount, 'price' | 'upkeep' | 'lives'>>;

/** The prices that a site file gives to mounts of an array, in its base or in a variant; the first of each kind. */
export function mountPricesOf(site: SiteFile, arrayName: string | undefined): MountPrices {
  const found = new Map<SiteMount['kind'], Pick<SiteMount, 'price' | 'upkeep' | 'lives'>>();
  for (const { arrays } of [site.base, ...site.variants.values()]) {
    for (const { name, mount } of arrays) {
      const { kind, price, upkeep, lives } = mount;
      if (price === undefined || found.has(kind) || (arrayName !== undefined && name !== arrayName)) continue;
      found.set(kind, { price, ...(upkeep !== undefined && { upkeep }), ...(lives !== undefined && { lives }) });
    }
  }
  return found;
}
