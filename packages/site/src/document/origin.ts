import type { SiteValues } from '../schema/design.js';
import { nearestPlace, type Places } from './places.js';
import { joinedPath, SiteError } from './site-problem.js';

/** Where a design was read from: plain data, which may be handed to a worker. */
export interface SiteOrigin {
  /** The site file, as the user named it. */
  file: string;
  /** Path of keys to the variant whose changes the design has, such as `variants.fixed`; empty for the base. */
  within: string;
  /** Where the file's values stand; empty when the design has values that stand nowhere in it. */
  places: Places;
  /** Keys of usual values that the design as written leaves out, such as `generator.warmUp`. */
  unsaid: readonly string[];
}

/** One design of a place: its values, and where they came from if that was a site file. */
export type Site = SiteValues & { origin?: SiteOrigin };

/**
 * What is wrong with a value of a design, told with file, line and column where the design came from a file; otherwise
 * under the design's name.
 *
 * @param path keys that lead to the value, such as `arrays[0].module.vmp`
 */
export function siteError({ name, origin }: Site, path: string, message: string): SiteError {
  if (!origin) return new SiteError(name, [{ line: 0, column: 0, path, message }]);
  const { file, within, places } = origin;
  const inVariant = joinedPath(within, path);
  const ofVariant = within === '' ? null : nearestPlace(places, inVariant, within);
  // What a variant does not change is wrong in the base, and to be mended there.
  const problem = ofVariant
    ? { ...ofVariant, path: inVariant }
    : { ...(nearestPlace(places, path) ?? { line: 0, column: 0 }), path };
  return new SiteError(file, [{ ...problem, message }]);
}

/** Weekday of 1 January in the site's calendar year, 0 for Sunday. */
export const firstWeekday = ({ calendarYear }: Site): number => new Date(Date.UTC(calendarYear, 0, 1)).getUTCDay();
