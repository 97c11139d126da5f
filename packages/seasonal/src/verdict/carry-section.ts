import { readSection, type SiteFile } from '@wintergap/site';
import { between, fraction, mapping, number, quantity, type Schema, word } from '@wintergap/site/fields';
import { type HydrogenChain, type HydrogenKeeping, hydrogenRange, hydrogenTechnology } from '../store/hydrogen.js';
import type { StoreTechnology } from '../store/seasonal-store.js';

/** What the site file's `carry` key asks for. */
export interface CarrySettings {
  store: CarryStore;
  /** Largest array looked at that could cover the year, as a multiple of the design's. */
  largestArray: number;
}

/** The kind of store: hydrogen by the published ranges, or one with its own numbers. */
export type CarryStore =
  | { kind: 'hydrogen'; keeping: HydrogenKeeping; in: Idling; out: Idling }
  | { kind: 'own'; technology: StoreTechnology };

/** What a converter does besides converting. */
export interface Idling {
  minimumLoad: number;
  standbyW: number;
}

/** A store to be tried, and the chain of figures behind it when it is hydrogen. */
export interface NamedTechnology {
  name: 'low' | 'typical' | 'high' | 'own';
  technology: StoreTechnology;
  chain: HydrogenChain | null;
}

/** An electrolyser stops somewhere between 5 and 30 % of its rating (from memory); a lower middle unless given. */
const usualElectrolyser: Idling = { minimumLoad: 0.1, standbyW: 0 };
const usualFuelCell: Idling = { minimumLoad: 0, standbyW: 0 };
const usualLargestArray = 16;

const efficiency = fraction({ min: 0.01, max: 1, say: 'an efficiency from 1 % to 100 %' });
const converter = mapping({
  efficiency: efficiency.optional(),
  minimumLoad: fraction().optional(),
  standby: quantity('power', between(0, 1e6, 'W')).optional(),
});
const ownStore = mapping({
  kind: word(['own', 'hydrogen']).default('own'),
  keeping: word(['unpressed', '200 bar']).optional(),
  in: converter.optional(),
  standing: quantity('fractionPerTime', { min: 0, max: 0.5, say: 'a loss such as 0.1 %/day' }).optional(),
  out: converter.optional(),
}).superRefine((store, context) => {
  const report = (path: string[], message: string) => context.addIssue({ code: 'custom', path, message });
  for (const side of ['in', 'out'] as const) {
    const given = store[side]?.efficiency !== undefined;
    if (store.kind === 'own' && !given) report([side], `expected ${side}: { efficiency: 65 % }, or store: hydrogen`);
    if (store.kind === 'hydrogen' && given) {
      report(
        [side, 'efficiency'],
        'hydrogen takes its efficiencies from published ranges; write kind: own for your own',
      );
    }
  }
  if (store.kind === 'own' && store.keeping) report(['keeping'], 'only hydrogen has a keeping');
  if (store.kind === 'hydrogen' && store.standing) report(['standing'], 'hydrogen is counted as tightly kept');
});
const schema = mapping({
  store: word(['hydrogen']).or(ownStore).optional(),
  largestArray: number(1, 100, 'a multiple of this array').optional(),
});

/** How the `carry` key of a site file is written. */
export const carrySection: Schema = schema;

const plainHydrogen = {
  kind: 'hydrogen',
  keeping: '200 bar',
  in: usualElectrolyser,
  out: usualFuelCell,
} as const satisfies CarryStore;

/**
 * Reads the `carry` key of a site file. Without it the store is hydrogen at 200 bar.
 *
 * @throws SiteError with line, column and path of every problem in it
 */
export function readCarry(site: SiteFile): CarrySettings {
  const written = readSection(site, 'carry', schema);
  const largestArray = written?.largestArray ?? usualLargestArray;
  const store = written?.store;
  if (store === undefined || store === 'hydrogen') return { store: plainHydrogen, largestArray };
  const idling = (side: 'in' | 'out', usual: Idling): Idling => ({
    minimumLoad: store[side]?.minimumLoad ?? usual.minimumLoad,
    standbyW: store[side]?.standby ?? usual.standbyW,
  });
  if (store.kind === 'hydrogen') {
    const keeping = store.keeping ?? plainHydrogen.keeping;
    return {
      store: { kind: 'hydrogen', keeping, in: idling('in', usualElectrolyser), out: idling('out', usualFuelCell) },
      largestArray,
    };
  }
  const none: Idling = { minimumLoad: 0, standbyW: 0 };
  return {
    store: {
      kind: 'own',
      technology: {
        kind: 'own',
        converterIn: { efficiency: store.in!.efficiency!, ...idling('in', none) },
        standingLossPerH: store.standing ?? 0,
        converterOut: { efficiency: store.out!.efficiency!, ...idling('out', none) },
      },
    },
    largestArray,
  };
}

/** The technologies to be tried, and among them the one that is judged. */
export function technologiesOf(store: CarryStore): { tried: NamedTechnology[]; judged: NamedTechnology } {
  if (store.kind === 'own') {
    const own: NamedTechnology = { name: 'own', technology: store.technology, chain: null };
    return { tried: [own], judged: own };
  }
  const range = hydrogenRange(store.keeping);
  const named = (name: 'low' | 'typical' | 'high'): NamedTechnology => ({
    name,
    technology: hydrogenTechnology(range[name], store.in, store.out),
    chain: range[name],
  });
  const judged = named('typical');
  return { tried: [named('low'), judged, named('high')], judged };
}
