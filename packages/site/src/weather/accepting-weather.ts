import type { Site } from '../document/origin.js';
import type { SiteFile } from '../load-site.js';

/** The site with `accepted: true` at its weather, in base and variants: rejected weather is run all the same. */
export function acceptingWeather(site: SiteFile): SiteFile {
  const content = { ...site.document.content };
  if ('weather' in content) content.weather = accepted(content.weather);
  const { variants } = content;
  if (typeof variants === 'object' && variants !== null) {
    content.variants = Object.fromEntries(
      Object.entries(variants as Record<string, unknown>).map(([name, change]) => [
        name,
        isMapping(change) && 'weather' in change ? { ...change, weather: accepted(change.weather) } : change,
      ]),
    );
  }
  return {
    ...site,
    base: acceptingDesign(site.base),
    variants: new Map([...site.variants].map(([name, design]) => [name, acceptingDesign(design)])),
    document: { ...site.document, content },
  };
}

function acceptingDesign(design: Site): Site {
  return 'months' in design.weather ? design : { ...design, weather: { ...design.weather, accepted: true } };
}

function accepted(written: unknown): unknown {
  if (typeof written === 'string') return { file: written, accepted: true };
  return isMapping(written) && !('months' in written) ? { ...written, accepted: true } : written;
}

const isMapping = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
