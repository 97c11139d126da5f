import { mustBeAbove } from '@wintergap/ground';
import type { Site } from '@wintergap/site';

type SiteArray = Site['arrays'][number];

/**
 * The design with all its arrays larger or smaller by a factor, as if parts of strings could be had: the nearest whole
 * number of strings, their module currents adjusted to the rest. Cable section, the controller's current limit and what
 * mount and controller draw and cost scale too. Clipping and the operating voltage stay what they are, and so does the share lost
 * in the cable but for the warmth of its copper, so the array's power scales to half a thousandth.
 *
 * @param scale above 0; 1 is the design itself
 */
export function withScaledArray(site: Site, scale: number): Site {
  mustBeAbove('scale', scale, 0);
  return scale === 1 ? site : { ...site, arrays: site.arrays.map((array) => scaled(array, scale)) };
}

function scaled(array: SiteArray, scale: number): SiteArray {
  const { module, cable, controller, mount } = array;
  const strings = array.strings === 0 ? 0 : Math.max(1, Math.round(array.strings * scale));
  const rest = strings === 0 ? 1 : (array.strings * scale) / strings;
  return {
    ...array,
    strings,
    module: {
      ...module,
      imp: module.imp * rest,
      isc: module.isc * rest,
      ...(module.power !== undefined && { power: module.power * rest }),
      ...(module.area !== undefined && { area: module.area * rest }),
      ...scaledPrice(module, rest),
    },
    ...(cable && { cable: { ...cable, size: cable.size * scale } }),
    controller: {
      ...controller,
      ...(controller.maxCurrent !== undefined && { maxCurrent: controller.maxCurrent * scale }),
      nightDraw: controller.nightDraw * scale,
      ...scaledPrice(controller, scale),
    } as SiteArray['controller'],
    mount: {
      ...mount,
      ...('drive' in mount && mount.drive !== undefined && { drive: mount.drive * scale }),
      ...scaledPrice(mount, scale),
    } as SiteArray['mount'],
  };
}

/** Price and upkeep of so much of a thing; what is priced by its power needs no change. */
function scaledPrice({ price, upkeep }: Pick<SiteArray['module'], 'price' | 'upkeep'>, scale: number) {
  return {
    ...(typeof price === 'number' && { price: price * scale }),
    ...(upkeep !== undefined && { upkeep: upkeep * scale }),
  };
}
