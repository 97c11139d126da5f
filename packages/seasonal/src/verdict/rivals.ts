import { type Site, SiteError } from '@wintergap/site';
import { bankFacts, exceededLimits, type YearResult } from '@wintergap/year';
import type { Costs } from '../cost/costs-section.js';
import { type DesignCost, lifeCycleOfDesign, lifeCycleOfYear } from '../cost/design-cost.js';
import type { Simulate } from '../store/converter-in-engine-place.js';
import { withScaledArray } from '../store/scaled-array.js';
import { steeperWinter } from './steeper-winter.js';

/** A change of the design that answers some of the same winter load without a seasonal store. */
export interface RivalDesign {
  kind: 'array' | 'tilt' | 'bank' | 'load';
  name: string;
  site: Site;
}

/** What such a change does to the year, by simulating it again. */
export interface Rival {
  kind: RivalDesign['kind'];
  name: string;
  generatorHours: number;
  hoursSaved: number;
  fuelLitres: number;
  fuelSavedLitres: number;
  darkKWh: number;
  throttledKWh: number;
  /** Highest bank temperature of the year, degC. */
  warmestBankC: number;
  cost: DesignCost | null;
}

type SiteArray = Site['arrays'][number];

/** Shares of array added, besides one whole string. */
const moreArray = [0.2, 0.5, 1] as const;
/** How many loads are left out, one at a time. */
const mostLoads = 4;

/**
 * Simulates the rivals of a seasonal store, engine in place.
 *
 * A bank in a tighter cabinet is priced with the life it has now: whoever tightens a cabinet for the winter opens its
 * vents in summer, which the year simulated does not. A rival over a calculated limit must not be built, also where the base
 * is over the same one, and is left out.
 */
export function tryRivals(base: YearResult, simulate: Simulate, costs: Costs | null): Rival[] {
  const { generator } = base.summary;
  const bankYears = costs ? bankFacts(base).wear.yearsTo80 : 0;
  return rivalDesigns(base).flatMap(({ kind, name, site }) => {
    const year = kind === 'bank' ? withinModel(() => simulate(site)) : simulate(site);
    if (year === null || exceededLimits(year.limits).length > 0) return [];
    const { hours, fuelLitres } = year.summary.generator;
    const cost =
      costs &&
      (kind === 'bank' ? lifeCycleOfDesign(year.summary, site, costs, bankYears) : lifeCycleOfYear(year, costs));
    return {
      kind,
      name,
      generatorHours: hours,
      hoursSaved: generator.hours - hours,
      fuelLitres,
      fuelSavedLitres: generator.fuelLitres - fuelLitres,
      darkKWh: year.summary.load.darkKWh,
      throttledKWh: year.summary.throttle.kWh,
      warmestBankC: year.summary.bank.maxTemp,
      cost,
    };
  });
}

/** `null` when a bank that keeps its heat all summer leaves the temperatures its model is made for. */
function withinModel(run: () => YearResult): YearResult | null {
  try {
    return run();
  } catch (error) {
    if (error instanceof RangeError || error instanceof SiteError) return null;
    throw error;
  }
}

/** More array, a steeper winter tilt, a warmer bank, and the largest loads left out one by one. */
export function rivalDesigns({ site, load }: YearResult): RivalDesign[] {
  return [...arrayRivals(site), ...tiltRivals(site), ...bankRivals(site), ...loadRivals(site, load.items)];
}

function arrayRivals(site: Site): RivalDesign[] {
  const ratedW = ({ inSeries, module }: SiteArray) => inSeries * module.vmp * module.imp;
  const used = site.arrays.filter(({ strings }) => strings > 0);
  if (used.length === 0) return [];
  const largest = used.reduce((most, array) =>
    array.strings * ratedW(array) > most.strings * ratedW(most) ? array : most,
  );
  const arrays = site.arrays.map((array) => (array === largest ? { ...array, strings: array.strings + 1 } : array));
  return [
    {
      kind: 'array',
      name: `one more string (${(ratedW(largest) / 1000).toFixed(1)} kW)`,
      site: { ...site, arrays },
    },
    ...moreArray.map(
      (share): RivalDesign => ({
        kind: 'array',
        name: `array ${Math.round(share * 100)} % larger`,
        site: withScaledArray(site, 1 + share),
      }),
    ),
  ];
}

function tiltRivals(site: Site): RivalDesign[] {
  const hemisphere = site.place.latitude < 0 ? 'south' : 'north';
  const tilts: string[] = [];
  const arrays = site.arrays.map((array) => {
    const steeper = steeperWinter(array.mount, hemisphere);
    if (!steeper || array.strings === 0) return array;
    tilts.push(`${steeper.tilt} instead of ${steeper.was}`);
    return { ...array, mount: steeper.mount };
  });
  if (tilts.length === 0) return [];
  const name = tilts.length === 1 ? `winter tilt ${tilts[0]}` : `steeper winter tilts: ${tilts.join(', ')}`;
  return [{ kind: 'tilt', name, site: { ...site, arrays } }];
}

function bankRivals(site: Site): RivalDesign[] {
  const { cabinet } = site.bank;
  if (!cabinet) return [];
  const { insulation } = cabinet;
  const halved = typeof insulation === 'number' ? insulation / 2 : { ...insulation, foam: 2 * insulation.foam };
  const bank = { ...site.bank, cabinet: { ...cabinet, insulation: halved } } as Site['bank'];
  return [{ kind: 'bank', name: 'cabinet losing half the heat', site: { ...site, bank } }];
}

function loadRivals(site: Site, items: YearResult['load']['items']): RivalDesign[] {
  return items
    .filter(({ name, energyWhYear }) => energyWhYear > 0 && site.loads.some((load) => load.name === name))
    .sort((a, b) => b.energyWhYear - a.energyWhYear)
    .slice(0, mostLoads)
    .map(({ name, energyWhYear }) => ({
      kind: 'load',
      name: `without ${name} (${Math.round(energyWhYear / 1000)} kWh)`,
      site: { ...site, loads: site.loads.filter((load) => load.name !== name) },
    }));
}
