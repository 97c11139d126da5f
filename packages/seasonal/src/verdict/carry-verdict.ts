import { arraysPrice } from '../cost/bill.js';
import { unlikeThings } from '../cost/cost-difference.js';
import { notableKWh } from './carry-cautions.js';
import type { CarryStudy } from './carry-study.js';
import { amount, inMoney, verdictText } from './verdict-text.js';

/** Surplus too small to name, kWh a year. */
const noSurplusKWh = 0.5;

/**
 * The verdict in plain sentences: the answer, the numbers that decide it, and what would change it.
 *
 * @param system litres, or US gallons
 */
export function carryVerdict(study: CarryStudy, system: 'metric' | 'us'): string {
  const { asItIs, judged, closing } = study;
  const { judgement } = judged;
  const hasEngine = asItIs.site.generator !== undefined;
  if (judgement.verdict === 'nothing to retire') {
    const beyondKWh = judged.year.beyondWh / 1000;
    if (beyondKWh > notableKWh) {
      return `Nothing a store could answer: ${amount(beyondKWh)} kWh of AC load stay dark because the inverter cannot give them.`;
    }
    return hasEngine
      ? 'Nothing to retire: sun and bank carry this load, and the engine gives nothing.'
      : 'Nothing to retire: sun and bank carry this load, and there is no engine.';
  }
  // The caution is shown with the others.
  const currency = asItIs.site.costs?.currency;
  const judgedText = verdictText(judgement, closing, system, currency).split('\n')[0]!;
  const sentences: string[] = [];
  if (asItIs.summary.array.ratedKW === 0) {
    sentences.push('Nothing to carry: this design has no array.');
  } else if (study.surplusKWh < noSurplusKWh && judged.scale === 1) {
    sentences.push(
      'Nothing to carry: bank and load take all that this array gives, in summer too. A larger array comes before a store.',
    );
    if (closing?.closes) sentences.push(`${times(closing.scale)} this array would cover the year with a store.`);
    else if (closing) sentences.push(`Not even ${times(closing.largestTried)} this array would cover the year.`);
  } else if (!hasEngine) {
    sentences.push(...withoutEngine(study));
  } else {
    sentences.push(judgedText);
    if (judged.scale !== 1) {
      sentences.push(`That is with an array ${times(judged.scale)} as large as this one, its price included.`);
    }
    sentences.push(...bestRival(study));
    if (judgement.verdict === 'no prices') sentences.push(...whatPricesWouldSay(study));
  }
  return sentences.join(' ');
}

function withoutEngine({ asItIs, judged, closing }: CarryStudy): string[] {
  const { size, store, cost } = judged.judgement;
  const { darkHours, darkKWh } = asItIs.summary.load;
  const dark = `No engine to retire, but ${amount(darkKWh)} kWh of load a year stay dark, over ${amount(darkHours)} h.`;
  if (!size.closes) {
    const brings = `A store would bring ${amount(size.bringsWh / 1000)} kWh of the ${amount(size.demandWh / 1000)} kWh needed.`;
    const larger = closing?.closes ? [`${times(closing.scale)} this array would cover the year.`] : [];
    return [dark, brings, ...larger];
  }
  const sizes =
    `A store of ${amount(store.store.capacityWh / 1000)} kWh, filled with ${amount(store.converterIn.powerW / 1000)} kW ` +
    `and emptied with ${amount(store.converterOut.powerW / 1000)} kW, would answer them`;
  const price = cost?.store
    ? ` and costs ${inMoney(cost.store.total, asItIs.site.costs?.currency)} over ${cost.years} years`
    : '';
  const array = judged.scale === 1 ? '' : `, with an array ${times(judged.scale)} as large`;
  return [dark, `${sizes}${array}${price}.`];
}

/** A rival must be cheaper by this share to be named. */
const clearlyCheaper = 0.01;

/** The change of array, tilt or cabinet that beats engine and store, by cost where prices tell, else by engine hours. */
function bestRival({ rivals, asItIs, asItIsCost, withStoreCost }: CarryStudy): string[] {
  const changes = rivals.filter(({ kind }) => kind !== 'load');
  const now = asItIsCost?.lifeCycle?.total;
  if (now === undefined) {
    const best = changes.reduce((a, b) => (a && a.hoursSaved >= b.hoursSaved ? a : b), changes[0]);
    if (!best || best.hoursSaved < 1) return [];
    const { hours } = asItIs.summary.generator;
    return [`Without a store, ${best.name} saves ${amount(best.hoursSaved)} of the ${amount(hours)} engine hours.`];
  }
  const currency = asItIs.site.costs?.currency;
  // What has no price in a rival, and is not in the design as it is, could cost anything.
  const costOf = ({ cost }: (typeof changes)[number]): number =>
    cost?.lifeCycle && unlikeThings(cost, asItIsCost!).here.length === 0
      ? cost.lifeCycle.total
      : Number.POSITIVE_INFINITY;
  const best = changes.reduce((a, b) => (a && costOf(a) <= costOf(b) ? a : b), changes[0]);
  const toBeat = Math.min(now, withStoreCost ?? now);
  if (!best || costOf(best) > toBeat * (1 - clearlyCheaper)) return [];
  return [
    `Cheaper than ${withStoreCost === null ? 'that' : 'both'}: ${best.name}, which leaves ${amount(best.generatorHours)} ` +
      `engine hours and costs ${inMoney(costOf(best), currency)} in all against ${inMoney(now, currency)} as it is.`,
  ];
}

/** What the prices that are there say, and which would settle it. */
function whatPricesWouldSay({ asItIs, engineCost, costs, judged }: CarryStudy): string[] {
  const sentences: string[] = [];
  if (engineCost && costs && costs.store === null) {
    sentences.push(
      `Letting the engine go on costs ${inMoney(engineCost.total, asItIs.site.costs?.currency)} over ${costs.years} years: ` +
        'all that the store may cost, converters and upkeep included.',
    );
  }
  const wanted = [
    ...(asItIs.site.generator?.fuel.price === undefined ? ['generator.fuel.price'] : []),
    ...(costs?.years == null ? ['costs.years'] : []),
    ...(costs?.store?.keptPerKWh == null ? ['costs.store'] : []),
    ...(judged.scale > 1 && (!costs || arraysPrice(asItIs.site, costs) === null) ? ['costs.array'] : []),
  ];
  if (wanted.length > 0) sentences.push(`For a verdict in money give ${wanted.join(', ')} in the site file.`);
  return sentences;
}

const times = (scale: number): string => `${Number(scale.toPrecision(2))} times`;
