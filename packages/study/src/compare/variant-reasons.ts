import type { Site } from '@wintergap/site';
import { monthlySums } from '@wintergap/tally';
import { arrayLosses, type YearResult } from '@wintergap/year';
import { presentEffects } from '../weigh/effect-weights.js';
import { type Effect, effects } from '../weigh/effects.js';
import { leanMonths, sumInMonths } from '../weigh/lean-months.js';

/** Why a variant's engine runs longer or shorter than the base's. Differences are variant less base. */
export interface VariantReasons {
  variant: string;
  generatorHours: number;
  fuelLitres: number;
  /** Load that stays dark. */
  darkKWh: number;
  /**
   * The part of the difference that is gone once an effect is left out of both designs, and how much more energy it
   * takes from the variant in the lean months; largest first.
   */
  effects: { name: string; takenKWh: number; generatorHours: number; fuelLitres: number }[];
  /** What the effects do not explain: what the variant is about, such as where its plane points. */
  restHours: number;
  energy: EnergyReasons;
}

/** Differences of energy in the months in which either design runs an engine or leaves load dark, kWh: exact, where hours are lumpy. */
export interface EnergyReasons {
  months: number[];
  arrayOfferedKWh: number;
  /** What adds up to `arrayOfferedKWh`: the light on the planes, then every loss of the chain; positive gives more. */
  arrayParts: { name: string; kWh: number }[];
  arrayUsedKWh: number;
  loadKWh: number;
  /** In bank, inverter, converters, charger, and own use. */
  lostKWh: number;
}

export interface NamedResult {
  name: string;
  result: YearResult;
}

/** Difference of what an effect takes from two designs below which it is no reason, kWh: charging losses vary as much. */
const noReasonKWh = 2;

/**
 * The reasons for each variant's difference from the base, the first design: every effect that one of them has is left
 * out of both, and the difference of the two years compared with the one with it. An effect counts as a reason only if
 * it takes more energy from the design that runs the engine longer for it: any relief makes all differences smaller.
 */
export function variantReasons(
  [base, ...variants]: readonly [NamedResult, ...NamedResult[]],
  rerun: (site: Site) => YearResult,
): VariantReasons[] {
  const baseWithout = new Map<Effect, Relieved>();
  return variants.map(({ name, result }) => {
    const total = difference(costOf(result), costOf(base.result));
    const months = leanMonths([base.result, result]);
    const reasons = effectsOfEither(base.result, result).flatMap((effect) => {
      const relieved = (design: YearResult): Relieved => {
        const year = rerun(effect.without(design.site));
        return { cost: costOf(year), sideWh: sideWh(year, effect.takesFrom) };
      };
      const held = baseWithout.get(effect) ?? relieved(base.result);
      baseWithout.set(effect, held);
      const without = relieved(result);
      const gapKWh = (of: YearResult, freed: Relieved) =>
        inMonths(freed.sideWh, months) - inMonths(sideWh(of, effect.takesFrom), months);
      const takenKWh = gapKWh(result, without) - gapKWh(base.result, held);
      const hours = difference(total, difference(without.cost, held.cost));
      const isReason = Math.abs(takenKWh) >= noReasonKWh && Math.sign(takenKWh) === Math.sign(hours.generatorHours);
      return isReason ? [{ name: effect.name, takenKWh, ...hours }] : [];
    });
    return {
      variant: name,
      ...total,
      darkKWh: result.summary.load.darkKWh - base.result.summary.load.darkKWh,
      effects: reasons.sort((one, other) => Math.abs(other.generatorHours) - Math.abs(one.generatorHours)),
      restHours: reasons.reduce((rest, part) => rest - part.generatorHours, total.generatorHours),
      energy: energyReasons(base.result, result, months),
    };
  });
}

/** How many years `variantReasons` runs. */
export function reasonRuns([base, ...variants]: readonly [NamedResult, ...NamedResult[]]): number {
  const all = new Set(variants.flatMap(({ result }) => effectsOfEither(base.result, result)));
  return variants.reduce((runs, { result }) => runs + effectsOfEither(base.result, result).length, all.size);
}

function effectsOfEither(one: YearResult, other: YearResult): Effect[] {
  const present = new Set([...presentEffects(one), ...presentEffects(other)]);
  return effects.filter((effect) => present.has(effect));
}

type Cost = Pick<VariantReasons, 'generatorHours' | 'fuelLitres'>;

const difference = (one: Cost, other: Cost): Cost => ({
  generatorHours: one.generatorHours - other.generatorHours,
  fuelLitres: one.fuelLitres - other.fuelLitres,
});

function costOf(result: YearResult): Cost {
  const { hours, fuelLitres } = result.summary.generator;
  return { generatorHours: hours, fuelLitres };
}

const lossColumns = [
  'bankLossWh',
  'selfDischargeWh',
  'inverterLossWh',
  'converterLossWh',
  'chargerLossWh',
  'ownUseWh',
] as const;

/** Cost of a year without an effect, and what the side it acts on had to give by month, Wh. */
interface Relieved {
  cost: Cost;
  sideWh: Float64Array;
}

/** What array, draw or bank contribute by month, Wh, more being better: free of what the engine's runs feed back. */
function sideWh({ ledger, load }: YearResult, side: Effect['takesFrom']): Float64Array {
  switch (side) {
    case 'array':
      return monthlySums(ledger.arrayAvailableWh);
    case 'draw':
      return less([load.acW, load.dcW, ledger.inverterLossWh, ledger.converterLossWh, ledger.ownUseWh]);
    case 'bank':
      return less([ledger.bankLossWh, ledger.selfDischargeWh]);
  }
}

function less(columns: readonly Float64Array[]): Float64Array {
  const net = new Float64Array(12);
  for (const column of columns) {
    const sums = monthlySums(column);
    for (let m = 0; m < 12; m++) net[m]! -= sums[m]!;
  }
  return net;
}

const inMonths = (monthlyWh: Float64Array, months: readonly number[]) =>
  months.reduce((sum, month) => sum + monthlyWh[month - 1]! / 1000, 0);

function energyReasons(base: YearResult, variant: YearResult, months: number[]): EnergyReasons {
  const kWh = (of: (result: YearResult) => number) => (of(variant) - of(base)) / 1000;
  const load = ({ load: { acW, dcW } }: YearResult) => sumInMonths(acW, months) + sumInMonths(dcW, months);
  return {
    months,
    arrayOfferedKWh: kWh(({ ledger }) => sumInMonths(ledger.arrayAvailableWh, months)),
    arrayParts: arrayParts(base, variant, months),
    arrayUsedKWh: kWh(({ ledger }) => sumInMonths(ledger.arrayUsedWh, months)),
    loadKWh: kWh(load),
    lostKWh: kWh(({ ledger }) => lossColumns.reduce((sum, name) => sum + sumInMonths(ledger[name], months), 0)),
  };
}

/** Beyond what the array offers: counted by the ledger, not here. What a current limit cuts off is not offered. */
const afterOffer = 'throttled';

function arrayParts(base: YearResult, variant: YearResult, months: readonly number[]): EnergyReasons['arrayParts'] {
  const parts = new Map<string, number>();
  for (const [result, sign] of [[base, -1] as const, [variant, 1] as const]) {
    const add = (name: string, monthlyKWh: Float64Array) => {
      const kWh = months.reduce((sum, month) => sum + monthlyKWh[month - 1]!, 0);
      parts.set(name, (parts.get(name) ?? 0) + sign * (name === 'plane' ? kWh : -kWh));
    };
    for (const { chain } of arrayLosses(result)) {
      add('plane', chain.startKWh);
      for (const { name, kWh } of chain.losses) if (name !== afterOffer) add(name, kWh);
    }
  }
  return Array.from(parts, ([name, kWh]) => ({ name, kWh }));
}
