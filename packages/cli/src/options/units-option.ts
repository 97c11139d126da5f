import type { UnitSystem } from '@wintergap/quantity';
import { InputError } from '../input-error.js';

/**
 * The system of units to print in.
 *
 * @throws InputError when the option names none
 */
export function unitsOption(option: string | undefined, ofSite: UnitSystem): UnitSystem {
  if (option === undefined) return ofSite;
  if (option === 'metric' || option === 'us') return option;
  throw new InputError(`--units ${option}: expected metric or us`);
}
