import { type Site, snowExtremes } from '@wintergap/site';

/** Something that costs a design energy and that the simulation can leave out. */
export interface Effect {
  name: string;
  /** What leaving it out means, as far as the name does not say. */
  meaning: string;
  /** What it takes energy from: what the array offers, what loads and electronics draw, or what the bank gives back. */
  takesFrom: 'array' | 'draw' | 'bank';
  /** The design without it; an equal design where it has none of it. */
  without(site: Site): Site;
  /** Only where snow ever lies on an array. */
  ofSnow?: boolean;
}

type SiteArray = Site['arrays'][number];

const eachArray = (site: Site, change: (array: SiteArray) => SiteArray): Site => ({
  ...site,
  arrays: site.arrays.map(change),
});

const withLosses = (site: Site, losses: Partial<SiteArray['losses']>) =>
  eachArray(site, (array) => ({ ...array, losses: { ...array.losses, ...losses } }));

/** Heat flow to a room that keeps the bank at the room's temperature whatever happens, W/K. */
const tightCouplingWPerK = 1e5;
const referenceC = 25;
/** What somebody does who sweeps as soon as it has stopped snowing and is light. */
const sweptWithinH = 3;

/** Every effect that can be switched off alone, in the order of the energy's way from the sky to the loads. */
export const effects: readonly Effect[] = [
  {
    name: 'skyline',
    meaning: 'clear view all round',
    takesFrom: 'array',
    without: ({ horizon, ...site }) => ({ ...site, skyline: [] }),
  },
  {
    name: 'snow on the array',
    meaning: 'never covered',
    takesFrom: 'array',
    // The snow on the ground stays, and the light it throws.
    without: (site) => snowExtremes(site).none,
    ofSnow: true,
  },
  {
    name: 'snow left lying',
    meaning: `swept within ${sweptWithinH} h of daylight`,
    takesFrom: 'array',
    without: (site) =>
      site.snow.cover === 'none' || (site.snow.clearing?.within ?? Number.POSITIVE_INFINITY) <= sweptWithinH
        ? site
        : { ...site, snow: { ...site.snow, clearing: { within: sweptWithinH } } },
    ofSnow: true,
  },
  {
    name: 'glass',
    meaning: 'lets all light through at flat angles',
    takesFrom: 'array',
    without: (site) => withLosses(site, { glass: false }),
  },
  { name: 'soiling', meaning: 'always clean', takesFrom: 'array', without: (site) => withLosses(site, { soiling: 0 }) },
  {
    name: 'mismatch',
    meaning: 'all modules alike',
    takesFrom: 'array',
    without: (site) => withLosses(site, { mismatch: 0 }),
  },
  {
    name: 'ageing of the modules',
    meaning: 'as on the first day',
    takesFrom: 'array',
    without: (site) =>
      eachArray(site, (array) => (array.losses.age === 0 ? array : { ...array, losses: { ...array.losses, age: 0 } })),
  },
  {
    name: 'array cable',
    meaning: 'without resistance',
    takesFrom: 'array',
    without: (site) => eachArray(site, ({ cable, ...array }) => array),
  },
  {
    name: 'direct connection',
    meaning: 'best voltage always',
    takesFrom: 'array',
    without: (site) =>
      eachArray(site, (array) =>
        array.controller.kind === 'direct' ? { ...array, controller: idealTracker(array.controller) } : array,
      ),
  },
  {
    name: 'controller conversion',
    meaning: '100 % efficient',
    takesFrom: 'array',
    without: (site) =>
      eachArray(site, (array) =>
        array.controller.kind === 'direct' ? array : { ...array, controller: { ...array.controller, efficiency: 1 } },
      ),
  },
  {
    name: 'controller at night',
    meaning: 'draws nothing',
    takesFrom: 'draw',
    without: (site) => eachArray(site, (array) => ({ ...array, controller: { ...array.controller, nightDraw: 0 } })),
  },
  {
    name: 'tracker drive',
    meaning: 'draws nothing',
    takesFrom: 'draw',
    without: (site) => eachArray(site, withoutDrive),
  },
  {
    name: 'cold or hot bank',
    meaning: `kept at ${referenceC} degC`,
    takesFrom: 'bank',
    without: (site) => ({
      ...site,
      bank: {
        ...site.bank,
        cabinet: {
          ...(site.bank.cabinet?.heatCapacity !== undefined && { heatCapacity: site.bank.cabinet.heatCapacity }),
          insulation: 0,
          ventilation: 0,
          heatedBy: { kind: 'room', temperature: referenceC, coupling: tightCouplingWPerK },
        },
      },
    }),
  },
  {
    name: 'inverter idling',
    meaning: 'draws nothing',
    takesFrom: 'draw',
    // A search mode that never draws: the losses that go with the load stay as they are.
    without: (site) =>
      site.inverter && site.inverter.idle > 0
        ? { ...site, inverter: { ...site.inverter, search: { idle: 0, below: site.inverter.power } } }
        : site,
  },
  {
    name: 'standby of loads',
    meaning: 'all unplugged',
    takesFrom: 'draw',
    without: (site) => ({ ...site, loads: site.loads.map((load) => ({ ...load, standby: 0 })) }),
  },
  {
    name: 'failed starts',
    meaning: 'starts at the first try',
    takesFrom: 'draw',
    without: (site) => {
      if (!site.generator?.failsToStart) return site;
      const { failsToStart, ...sure } = site.generator;
      return { ...site, generator: sure };
    },
  },
];

/** A maximum-power controller that loses nothing, with the current limit of a direct one. */
function idealTracker({ maxCurrent, nightDraw }: Extract<SiteArray['controller'], { kind: 'direct' }>) {
  const noLimit = 1e6;
  return {
    kind: 'maximum-power' as const,
    maxVoltage: noLimit,
    maxCurrent: maxCurrent ?? noLimit,
    efficiency: 1,
    nightDraw,
  };
}

function withoutDrive(array: SiteArray): SiteArray {
  const { mount } = array;
  if (!('drive' in mount)) return array;
  const { drive, ...still } = mount;
  return { ...array, mount: still };
}

/** Whether a design has anything of an effect. */
export const isPresent = (effect: Effect, site: Site): boolean =>
  JSON.stringify(effect.without(site)) !== JSON.stringify(site);
