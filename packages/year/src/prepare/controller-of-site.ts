import type { Controller } from '@wintergap/array';
import type { SiteArray } from '@wintergap/site';

/** The site file's controller in the words of the array package. */
export function controllerOf(site: SiteArray['controller']): Controller {
  if (site.kind === 'direct') {
    return {
      kind: 'direct',
      nightDrawW: site.nightDraw,
      ...(site.maxCurrent !== undefined && { maxCurrentA: site.maxCurrent }),
      ...(site.maxVoltage !== undefined && { maxVoltageV: site.maxVoltage }),
    };
  }
  const { efficiency } = site;
  return {
    kind: 'maximum-power',
    maxVoltageV: site.maxVoltage,
    maxCurrentA: site.maxCurrent,
    efficiency:
      typeof efficiency === 'number' ? efficiency : { loadFraction: efficiency.at, efficiency: efficiency.is },
    nightDrawW: site.nightDraw,
  };
}
