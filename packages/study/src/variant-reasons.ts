import { arrayLosses, type Site, type YearResult } from '@wintergap/year';
import { presentEffects } from './effect-weights.js';
import { type Effect, effects } from './effects.js';
import { engineMonths, sumInMonths } from './engine-months.js';
import { outcomeOf } from './outcome.js';

/** Why a variant's engine runs longer or shorter than the base's. Differences are variant less base. */
export interface VariantReasons {
  variant: string;
  generatorHours: number;
  fuelLitres: number;
  /** Mean length of an engine run, h: a smaller part may be the luck of a day. */
  runHours: number;
  /** The part of the difference that is gone once an effect is left out of both designs; largest first. */
  effects: { name: string; generatorHours: number; fuelLitres: number }[];
  /** What the effects do not explain: what the variant is about, such as where its plane points. */
  restHours: number;
  energy: EnergyReasons;
}

/** Differences of energy in the months in which either design's engine runs, kWh: exact, where hours are lumpy. */
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

/**
 * The reasons for each variant's difference from the base, the first design: every effect that one of them has is left
 * out of both, and the difference of the two years compared with the one with it.
 */
export function variantReasons(
  [base, ...variants]: readonly [NamedResult, ...NamedResult[]],
  rerun: (site: Site) => YearResult,
): VariantReasons[] {
  const baseWithout = new Map<Effect, Cost>();
  return variants.map(({ name, result }) => {
    const total = difference(costOf(result), costOf(base.result));
    const parts = effectsOfEither(base.result, result).map((effect) => {
      let held = baseWithout.get(effect);
      if (!held) {
        held = costOf(rerun(effect.without(base.result.site)));
        baseWithout.set(effect, held);
      }
      const without = difference(costOf(rerun(effect.without(result.site))), held);
      return { name: effect.name, ...difference(total, without) };
    });
    return {
      variant: name,
      ...total,
      runHours: meanRun([base.result, result]),
      effects: parts.sort((one, other) => Math.abs(other.generatorHours) - Math.abs(one.generatorHours)),
      restHours: parts.reduce((rest, part) => rest - part.generatorHours, total.generatorHours),
      energy: energyReasons(base.result, result),
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
  const { generatorHours, fuelLitres } = outcomeOf(result);
  return { generatorHours, fuelLitres };
}

function meanRun(results: readonly YearResult[]): number {
  const starts = results.reduce((sum, { summary }) => sum + summary.generator.starts, 0);
  const hours = results.reduce((sum, { summary }) => sum + summary.generator.hours, 0);
  return starts > 0 ? hours / starts : 0;
}

const lossColumns = [
  'bankLossWh',
  'selfDischargeWh',
  'inverterLossWh',
  'converterLossWh',
  'chargerLossWh',
  'ownUseWh',
] as const;

function energyReasons(base: YearResult, variant: YearResult): EnergyReasons {
  const months = engineMonths([base, variant]);
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

/** Beyond what the array offers: counted by the ledger, not here. */
const afterOffer = new Set(['current limit', 'throttled']);

function arrayParts(base: YearResult, variant: YearResult, months: readonly number[]): EnergyReasons['arrayParts'] {
  const parts = new Map<string, number>();
  for (const [result, sign] of [[base, -1] as const, [variant, 1] as const]) {
    const add = (name: string, monthlyKWh: Float64Array) => {
      const kWh = months.reduce((sum, month) => sum + monthlyKWh[month - 1]!, 0);
      parts.set(name, (parts.get(name) ?? 0) + sign * (name === 'plane' ? kWh : -kWh));
    };
    for (const { chain } of arrayLosses(result)) {
      add('plane', chain.startKWh);
      for (const { name, kWh } of chain.losses) if (!afterOffer.has(name)) add(name, kWh);
    }
  }
  return Array.from(parts, ([name, kWh]) => ({ name, kWh }));
}
