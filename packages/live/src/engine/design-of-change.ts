import { designAsWritten, mergeVariant, type Site } from '@wintergap/site';
import type { Change } from '../design/change.js';
import type { HandOver } from '../hand-over/hand-over.js';

/**
 * The design of a set-up, by the site file's own rules for variants.
 *
 * @throws SiteError when it is not right
 */
export function designOfChange({ written, file, weather }: HandOver, change: Change): Site {
  return { ...designAsWritten(mergeVariant(written, change), file), weather };
}
