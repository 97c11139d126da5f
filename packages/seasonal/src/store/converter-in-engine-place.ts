import type { Site } from '@wintergap/site';
import type { YearResult } from '@wintergap/year';

/** Surplus a store may take and demand it must meet, hour by hour, Wh on the DC bus. */
export interface CarryBalance {
  surplusWh: Float64Array;
  demandWh: Float64Array;
}

/** The year of a design in which a store's converter out stands where the engine stood. */
export interface ConverterYear extends CarryBalance {
  year: YearResult;
  /** Power of converter out on the DC bus, W. */
  powerW: number;
  /** Load that stays dark whatever gives to the DC bus: above the inverter's rating, or AC without an inverter, Wh. */
  beyondWh: number;
}

/** Simulates a design of the same place under the same weather. */
export type Simulate = (site: Site) => YearResult;

/** Points of charge above the bank's floor that are held when the design has no engine start to go by: ours. */
const aboveFloor = 0.05;
/** Charge gained before converter out rests again: ours, small against a day's load. */
const restAbove = 0.03;
/** Each power tried is larger than the last by this factor, from the load of the heaviest week that needs help. */
const powerStep = 1.25;
const mostPowers = 16;
/** A larger converter is only taken when it leaves less than this share of the dark load. */
const stillHelps = 0.9;
/** Dark load, as a share of the load, that counts as none. */
const darkRounding = 1e-6;

/**
 * What a year throws away and what it asks of engine or store, per hour.
 *
 * Surplus is what the full bank and the load could not take; what is clipped at a controller stays lost. Demand is
 * what the engine, or a converter in its place, gave to the buses, and load that stayed dark though the DC bus could
 * have carried it, turned into what it would have drawn there.
 */
export function carryBalance({ plant, ledger }: YearResult): CarryBalance & { beyondWh: number } {
  const demandWh = new Float64Array(ledger.throttledWh.length);
  let beyondWh = 0;
  for (let h = 0; h < demandWh.length; h++) {
    let darkWh = 0;
    if (ledger.darkWh[h]! > 0) {
      const acW = plant.acW[h]!;
      const dcW = plant.dcW[h]!;
      const acDarkWh = Math.max(0, Math.min(acW, plant.inverterLimitW) - ledger.acServedWh[h]!);
      const dcDarkWh = Math.max(0, dcW - ledger.dcServedWh[h]!);
      if (acW > 0) darkWh += (acDarkWh * plant.inverterInputW[h]!) / acW;
      if (dcW > 0) darkWh += (dcDarkWh * plant.converterInputW[h]!) / dcW;
      beyondWh += Math.max(0, ledger.darkWh[h]! - acDarkWh - dcDarkWh);
    }
    demandWh[h] = ledger.generatorToBusWh[h]! + darkWh;
  }
  return { surplusWh: ledger.throttledWh, demandWh, beyondWh };
}

/**
 * The year with the engine taken out and a store's converter out in its place: at any hour, unheard, it holds the bank
 * at the state of charge at which the engine would have started. It is as large as the load of the heaviest week that
 * needed help, and made larger until no load stays dark or more power does not help; the bank carries the hours of the day.
 *
 * An engine charges in few long runs, and part of what it gives is thrown away with the next sun; a converter that only
 * holds the bank gives less. The bank takes no notice of where the energy comes from, so as long as the store does not
 * run empty, store and year together are one closed simulation: nothing is counted twice and nothing left out.
 *
 * @param site the design, its array as large as wanted
 * @param asItIs the year that tells which weeks need help
 */
export function converterInEnginePlace(site: Site, asItIs: YearResult, simulate: Simulate): ConverterYear {
  let best: ConverterYear | null = null;
  let leastDarkWh = Number.POSITIVE_INFINITY;
  let powerW = heaviestWeekW(asItIs);
  for (let tried = 0; tried < mostPowers; tried++) {
    const year = simulate(withConverter(site, asItIs.plant.bank.floor, powerW));
    const balance = carryBalance(year);
    const loadWh = 1000 * (year.summary.load.acKWh + year.summary.load.dcKWh);
    const darkWh = 1000 * year.summary.load.darkKWh - balance.beyondWh;
    if (best && darkWh > leastDarkWh * stillHelps) break;
    best = { ...balance, year, powerW };
    leastDarkWh = darkWh;
    if (darkWh <= darkRounding * loadWh) break;
    powerW *= powerStep;
  }
  return best!;
}

/** State of charge at which the design's engine starts, else a little above the bank's floor. */
function heldCharge({ generator }: Site, floor: number): number {
  const start = generator?.start;
  const held = start?.below ?? start?.byHand?.below ?? start?.beforeDullDay?.below ?? floor + aboveFloor;
  return Math.min(held, 1 - 2 * restAbove);
}

/** The design with a quiet source of `powerW` on the DC bus instead of its engine. */
function withConverter(site: Site, floor: number, powerW: number): Site {
  const held = heldCharge(site, floor);
  return {
    ...site,
    generator: {
      output: { bus: 'dc', power: powerW, efficiency: 1 },
      // Counted in litres by the simulation and read by nobody: what it uses is the store's affair.
      fuel: { kind: 'propane', atFull: 1, idle: 0 },
      start: { below: held, heldFor: 0, days: 'all', endsRun: false },
      stop: { above: held + restAbove, atBulkEnd: false },
      minimumRun: 1,
      warmUp: 0,
      coolDown: 0,
      minimumLoad: 0,
      derate: false,
    },
  };
}

const weekH = 168;

/** Largest mean draw on the DC bus of a week in which something was asked of engine or store, W. */
function heaviestWeekW(year: YearResult): number {
  const { plant } = year;
  const { demandWh } = carryBalance(year);
  const hours = demandWh.length;
  let loadWh = 0;
  let askedWh = 0;
  let heaviest = 0;
  for (let i = 0; i < hours + weekH; i++) {
    const h = i % hours;
    loadWh += plant.inverterInputW[h]! + plant.converterInputW[h]! + plant.ownUseW[h]!;
    askedWh += demandWh[h]!;
    if (i < weekH) continue;
    const gone = i - weekH;
    loadWh -= plant.inverterInputW[gone]! + plant.converterInputW[gone]! + plant.ownUseW[gone]!;
    askedWh -= demandWh[gone]!;
    if (askedWh > 1e-6 && loadWh > heaviest) heaviest = loadWh;
  }
  return Math.max(1, heaviest / weekH);
}
