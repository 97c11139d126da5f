import type { Site } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';
import { type DesignOutcome, heavierFirst, type Weight, weightOf } from '../outcome.js';
import { withTies } from './ties.js';
import type { Trial } from './trials.js';

/** One load and what the year would be without it, inverter and all else staying as they are. */
export interface LoadWeight {
  name: string;
  kind: 'appliance' | 'event' | 'measured';
  bus: 'ac' | 'dc' | 'both';
  kWhYear: number;
  /** The part of it drawn while it does not run. */
  standbyKWhYear: number;
  /** Share of all loads' energy in the month with the least sun for the load, 0 to 1. */
  darkMonthShare: number;
  weight: Weight;
  /** Other loads that the years do not tell apart from it. */
  tiedWith: string[];
}

type LoadItem = YearResult['load']['items'][number];

interface LoadCase extends Trial {
  kind: LoadWeight['kind'];
  parts: readonly LoadItem[];
}

/** Each load, event and measured table, and the design without it. */
function loadCases({ site, load: { items } }: YearResult): LoadCase[] {
  const { loads, events, measuredLoad } = site;
  const cases: LoadCase[] = [];
  const add = (kind: LoadCase['kind'], parts: readonly LoadItem[], without: Site) =>
    cases.push({ id: `load ${cases.length}`, kind, parts, site: without });
  loads.forEach((_, i) => {
    add('appliance', [items[i]!], { ...site, loads: loads.toSpliced(i, 1) });
  });
  events.forEach((_, i) => {
    add('event', [items[loads.length + i]!], { ...site, events: events.toSpliced(i, 1) });
  });
  const tables = items.slice(loads.length + events.length);
  if (measuredLoad && tables.length > 0) {
    const { measuredLoad: _, ...without } = site;
    add('measured', tables, without);
  }
  return cases;
}

/** The designs that `loadWeights` asks for. */
export const loadTrials = (base: YearResult): Trial[] => loadCases(base).map(({ id, site }) => ({ id, site }));

/**
 * What each load, event and measured table weighs, heaviest first: the years are run again without it, since a share of
 * the energy says little about the engine. The weights of all loads do not add up to the engine's hours.
 */
export function loadWeights(base: DesignOutcome, yearsOf: (id: string) => DesignOutcome): LoadWeight[] {
  const { items } = base.own.load;
  const { month } = base.own.summary.darkSeason;
  const weighed = loadCases(base.own).map(({ id, kind, parts }) => {
    const without = yearsOf(id);
    const share = shareInMonth(parts, items, month);
    return { thing: loadWeight(kind, parts, share, weightOf(base, without, month)), yearsWithout: without.common };
  });
  return withTies(weighed.sort((one, other) => heavierFirst(one.thing.weight, other.thing.weight)));
}

/** Share of some loads in the energy of all, in a month from 1 for January. */
function shareInMonth(parts: readonly LoadItem[], all: readonly LoadItem[], month: number): number {
  const sum = (items: readonly LoadItem[]) => items.reduce((wh, { monthsWh }) => wh + monthsWh[month - 1]!, 0);
  return sum(all) > 0 ? sum(parts) / sum(all) : 0;
}

function loadWeight(
  kind: LoadWeight['kind'],
  parts: readonly LoadItem[],
  darkMonthShare: number,
  weight: Weight,
): Omit<LoadWeight, 'tiedWith'> {
  const sum = (of: (item: LoadItem) => number) => parts.reduce((total, item) => total + of(item), 0);
  const [first] = parts;
  return {
    name: first!.name,
    kind,
    bus: parts.every((item) => item.bus === first!.bus) ? first!.bus : 'both',
    kWhYear: sum((item) => item.energyWhYear) / 1000,
    standbyKWhYear: sum((item) => item.standbyWhYear) / 1000,
    darkMonthShare,
    weight,
  };
}
