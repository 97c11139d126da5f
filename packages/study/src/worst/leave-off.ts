import { dateOfDay, daysPerYear } from '@wintergap/ground';
import type { Site } from '@wintergap/site';
import {
  type BareYear,
  measuredLoadOf,
  PreparedCache,
  simulateBare,
  type WorstSpell,
  type YearResult,
} from '@wintergap/year';

/** What leaving something off through a spell does; every figure is of a year that was run so. */
export interface LeftOff {
  name: string;
  kind: 'appliance' | 'event';
  /** Whether it runs by outdoor cold: pumps of a heating, heat tape. Leaving it off may freeze something. */
  followsCold: boolean;
  /** What it asks for in the spell. */
  loadKWh: number;
  /** In the spell, with this one alone left off, and with all before it in the list too. */
  alone: SpellNeed;
  withAllBefore: SpellNeed;
}

/** What a spell still needs beyond sun and bank. */
export interface SpellNeed {
  engineHours: number;
  darkKWh: number;
}

export interface LeaveOff {
  /** The spell as designed. */
  asDesigned: SpellNeed;
  /** First and last date of the spell, `MM-DD`. */
  from: string;
  to: string;
  /** What can be left off: what does not follow the cold first, and the largest first. */
  loads: LeftOff[];
  /** Names that are enough to do without the engine, or without darkness; `null` where even all of them are not. */
  enough: string[] | null;
  /** A measured table cannot be taken apart, and none of it is left off. */
  hasMeasured: boolean;
}

/** Things that are tried; the smallest beyond them change nothing. */
const mostTried = 12;
/** Needs below these are none. */
const noHours = 0.005;
const noKWh = 0.005;

const isMet = ({ engineHours, darkKWh }: SpellNeed): boolean => engineHours < noHours && darkKWh < noKWh;

interface Case {
  name: string;
  kind: LeftOff['kind'];
  followsCold: boolean;
  index: number;
  loadKWh: number;
}

/**
 * Which loads to leave off through a spell to do without the engine, or without darkness where there is none: each alone,
 * and one after the other. The whole year is run again each time, so that the bank comes into the spell as it would.
 */
export function leaveOff(own: YearResult, spell: WorstSpell): LeaveOff {
  const prepared = new PreparedCache();
  const lastDay = (spell.firstDay + spell.days.length - 1) % daysPerYear;
  const inputs = { weather: own.weather, measured: measuredLoadOf(own.site, prepared) };
  const off = [{ from: spell.firstDay, to: lastDay }];
  const days = spell.days.map((_, i) => (spell.firstDay + i) % daysPerYear);
  const run = (left: readonly Case[]) => simulateBare(without(own.site, left, off), inputs, prepared);
  const ownKWh = askedKWh(own, days);

  const all: Case[] = [
    ...own.site.loads.map(({ name, when }, index) => ({
      name,
      kind: 'appliance' as const,
      followsCold: when.outdoorBelow !== undefined,
      index,
      loadKWh: 0,
    })),
    ...own.site.events.map(({ name }, index) => ({
      name,
      kind: 'event' as const,
      followsCold: false,
      index,
      loadKWh: 0,
    })),
  ];
  const alone = new Map<Case, SpellNeed>();
  const cases = all
    .map((one) => {
      const year = run([one]);
      const asked = { ...one, loadKWh: ownKWh - askedKWh(year, days) };
      alone.set(asked, needIn(year, days));
      return asked;
    })
    .filter(({ loadKWh }) => loadKWh > noKWh / 10)
    .sort((a, b) => Number(a.followsCold) - Number(b.followsCold) || b.loadKWh - a.loadKWh)
    .slice(0, mostTried);

  const left: Case[] = [];
  let before: SpellNeed | null = null;
  const loads = cases.map((one): LeftOff => {
    left.push(one);
    // What is met stays met with still less load.
    if (!before || !isMet(before)) before = left.length === 1 ? alone.get(one)! : needIn(run(left), days);
    const { index: _, ...told } = one;
    return { ...told, alone: alone.get(one)!, withAllBefore: before };
  });
  return {
    asDesigned: needIn(own, days),
    from: dateOfDay(spell.firstDay),
    to: dateOfDay(lastDay),
    loads,
    enough: enoughOf(loads),
    hasMeasured: own.site.measuredLoad !== undefined,
  };
}

/** One load that is enough by itself, the smallest of those that do not follow the cold; else the first few of the list. */
function enoughOf(loads: readonly LeftOff[]): string[] | null {
  const single = loads
    .filter(({ alone }) => isMet(alone))
    .sort((a, b) => Number(a.followsCold) - Number(b.followsCold) || a.loadKWh - b.loadKWh)[0];
  const reached = loads.findIndex(({ withAllBefore }) => isMet(withAllBefore));
  if (single && !(single.followsCold && reached >= 0 && !loads[reached]!.followsCold)) return [single.name];
  return reached < 0 ? null : loads.slice(0, reached + 1).map(({ name }) => name);
}

function without(site: Site, left: readonly Case[], off: { from: number; to: number }[]): Site {
  const isLeft = (kind: Case['kind'], at: number) => left.some((one) => one.kind === kind && one.index === at);
  return {
    ...site,
    loads: site.loads.map((load, i) =>
      isLeft('appliance', i) ? { ...load, off: [...(load.off ?? []), ...off] } : load,
    ),
    events: site.events.map((event, i) =>
      isLeft('event', i) ? { ...event, off: [...(event.off ?? []), ...off] } : event,
    ),
  };
}

const sumIn = (days: readonly number[], of: (hour: number) => number): number => {
  let sum = 0;
  for (const day of days) for (let h = day * 24; h < day * 24 + 24; h++) sum += of(h);
  return sum;
};

const askedKWh = ({ load }: BareYear, days: readonly number[]) =>
  sumIn(days, (h) => load.acW[h]! + load.dcW[h]!) / 1000;

const needIn = ({ ledger }: BareYear, days: readonly number[]): SpellNeed => ({
  engineHours: sumIn(days, (h) => ledger.generatorH[h]!),
  darkKWh: sumIn(days, (h) => ledger.darkWh[h]!) / 1000,
});
