import { chemistryDefaults } from '@wintergap/battery';
import type { UnitSystem } from '@wintergap/quantity';
import type { Site } from './document/origin.js';
import type { SiteBank } from './schema/bank.js';
import { usual } from './schema/usual-values.js';

/** A value that the year assumed because the site file does not give it. */
export interface TakenAs {
  /** Keys that would give it in the site file, such as `generator.warmUp`. */
  key: string;
  /** The value as it would be written there, with its unit; `null` for none. */
  value: string | null;
  /** In words, with the value. */
  text: string;
  /** Where the value comes from. */
  source: string;
}

type UsualKey = keyof typeof usual;

const usualKeys = Object.keys(usual) as UsualKey[];

/** The usual values whose keys a design as written, variant and changes laid over it, leaves out. */
export const unsaidIn = (written: unknown): UsualKey[] => usualKeys.filter((key) => at(written, key) === undefined);

/**
 * What a year of this design assumes because its site file does not say. A design that was built in code, every value
 * given, has nothing of the kind; one that was read and then changed in code has what is still as taken.
 */
export function takenAs(site: Site, units: UnitSystem = 'metric'): TakenAs[] {
  const unsaid = new Set<string>(site.origin?.unsaid ?? []);
  return usualKeys.filter((key) => unsaid.has(key) && arises(site, key)).map((key) => listed(site, key, units));
}

/** Where a bank stands: unless the site file says so a cabinet outdoors, and a bank without one in the heated rooms. */
export const bankStands = ({ stands, cabinet }: SiteBank): NonNullable<SiteBank['stands']> =>
  stands ?? (cabinet ? 'outdoors' : 'rooms');

/** Whether the design has the part that the value is of, still as taken, and its year depends on it. */
function arises(site: Site, key: UsualKey): boolean {
  const part = key.slice(0, key.lastIndexOf('.'));
  if (at(site, part) === undefined || at(site, key) !== valueFor(site, key)) return false;
  const stands = bankStands(site.bank);
  const cooled = site.loads.some(({ when }) => when.roomAt !== undefined);
  switch (key) {
    case 'generator.stop.fullEvery':
      return chemistryDefaults[site.bank.chemistry].traits.sulphates;
    case 'rooms.atLeast':
      return cooled || stands === 'rooms';
    case 'rooms.above':
      return cooled || stands !== 'outdoors';
    default:
      return true;
  }
}

function listed(site: Site, key: UsualKey, units: UnitSystem): TakenAs {
  const { what, written, source, ...words } = usual[key];
  const shown = key === 'bank.stands' ? bankStands(site.bank) : at(site, key);
  const value = (written as (value: unknown, units: UnitSystem) => string | null)(shown, units);
  const said = 'said' in words ? words.said(shown as never, units) : value;
  return { key, value, text: `${what} ${said ?? 'none'}`, source };
}

function valueFor({ bank }: Site, key: UsualKey): unknown {
  const { value } = usual[key];
  return typeof value === 'function' ? value(bank) : value;
}

/** The value to which a path of keys leads; `undefined` where it leads nowhere. */
function at(values: unknown, path: string): unknown {
  let inner: unknown = values;
  for (const key of path.split('.')) inner = (inner as Record<string, unknown> | null | undefined)?.[key] ?? undefined;
  return inner;
}
