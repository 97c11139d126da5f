import { hydrogenCaution, hydrogenKg } from '../store/hydrogen.js';
import type { ClosingArray } from '../store/smallest-closing-array.js';
import type { CostComparison, StoreJudgement } from './judge-store.js';

const litresPerGallon = 3.785411784;

/**
 * The judgement in plain sentences, with the hydrogen caution on a line of its own where it applies.
 *
 * @param closing the smallest array that covers the year, when it was looked for
 * @param system litres, or US gallons
 * @param currency name of the money of the prices, where the site file gives one
 */
export function verdictText(
  judgement: StoreJudgement,
  closing: ClosingArray | null,
  system: 'metric' | 'us',
  currency?: string,
): string {
  const { size } = judgement;
  const sentences: string[] = [];
  if (judgement.verdict === 'nothing to retire') {
    sentences.push('Nothing to retire: sun and bank carry this load without an engine.');
  } else if (!size.closes) {
    sentences.push(
      `Not worth it: the store does not cover the year; this array's surplus is ${kWh(size.surplusWh)}, ` +
        `${broughtBy(size.surplusWh, size.roundTrip, size.bringsWh)} ${kWh(size.bringsWh)} of the ` +
        `${kWh(size.demandWh)} needed.`,
    );
  } else if (judgement.cost?.engine && judgement.cost.store) {
    const { cost, verdict } = judgement;
    sentences.push(
      `${verdict === 'worth it' ? 'Worth it:' : 'Not worth it: the store covers the year, but'} over ${cost.years} years the store ` +
        `costs ${inMoney(judgement.cost.store.total, currency)} and the engine ${inMoney(judgement.cost.engine.total, currency)}, in present value.`,
      sizeSentence(judgement, system),
      ...breakEvenSentences(judgement, system),
    );
  } else {
    sentences.push(
      'The store covers the year; whether it is worth it hangs on prices not given.',
      sizeSentence(judgement, system),
    );
    sentences.push(...breakEvenSentences(judgement, system));
  }
  if (closing && !size.closes) sentences.push(closingSentence(closing));
  const text = sentences.join(' ');
  const showsHydrogen = judgement.store.kind === 'hydrogen' && judgement.verdict !== 'nothing to retire';
  return showsHydrogen ? `${text}\n${hydrogenCaution}` : text;
}

function broughtBy(surplusWh: number, roundTrip: number, bringsWh: number): string {
  const percent = `${amount(roundTrip * 100)} % round trip`;
  // Without minimum load, standby and loss while stored the two agree.
  return bringsWh > 0.99 * surplusWh * roundTrip
    ? `${percent} brings`
    : `${percent} less standby, loss while stored and what is below the minimum load brings`;
}

function sizeSentence({ store, engine, size }: StoreJudgement, system: 'metric' | 'us'): string {
  const hydrogen =
    store.kind === 'hydrogen' ? ` (${mass(hydrogenKg(store.store.capacityWh), system)} of hydrogen)` : '';
  const drawnWh = size.year.totals.givenWh / store.converterOut.efficiency;
  const turns = store.store.capacityWh > 0 ? drawnWh / store.store.capacityWh : 0;
  return (
    `A store of ${kWh(store.store.capacityWh)}${hydrogen}, filled with ${kW(store.converterIn.powerW)} and emptied ` +
    `with ${kW(store.converterOut.powerW)}, is turned over ${times(turns)} a year and saves ` +
    `${fuel(engine.fuelLitresPerYear, system)} of fuel and ${amount(engine.hoursPerYear)} engine hours a year.`
  );
}

function breakEvenSentences({ cost, deciding }: StoreJudgement, system: 'metric' | 'us'): string[] {
  const [store, fuelPrice] = deciding;
  const { breakEvenStorePerKWh: storePerKWh, breakEvenFuelPerL: fuelPerL } = cost ?? noBreakEven;
  const perVolume = system === 'us' ? litresPerGallon : 1;
  const volume = system === 'us' ? 'gallon' : 'litre';
  const held = (value: number | null): string => (value === null ? '' : ` (now ${price(value)})`);
  const sentences: string[] = [];
  if (storePerKWh !== null) {
    sentences.push(
      storePerKWh > 0
        ? `Store and engine cost the same at ${price(storePerKWh)} per kWh of store${held(store.against)}.`
        : 'Even a free store would not pay for its converters.',
    );
  }
  if (fuelPerL !== null) {
    const now = fuelPrice.against === null ? null : fuelPrice.against * perVolume;
    sentences.push(
      fuelPerL > 0
        ? `They cost the same with fuel at ${price(fuelPerL * perVolume)} per ${volume}${held(now)}.`
        : 'The store pays even if fuel were free.',
    );
  }
  return sentences;
}

const noBreakEven: Pick<CostComparison, 'breakEvenStorePerKWh' | 'breakEvenFuelPerL'> = {
  breakEvenStorePerKWh: null,
  breakEvenFuelPerL: null,
};

function closingSentence(closing: ClosingArray): string {
  if (!closing.closes) return `No array up to ${amount(closing.largestTried)} times this one would cover it.`;
  const scale = `An array ${price(closing.scale)} times this one`;
  const allowance = `${price(closing.scaleWithAllowance)} times with the usual allowance for unknown losses`;
  return closing.needsStore
    ? `${scale} would cover it (${allowance}).`
    : `${scale} would need neither engine nor store (${allowance}).`;
}

/** An amount of money with the name of its currency, where the site file gives one. */
export const inMoney = (value: number, currency: string | undefined): string =>
  `${amount(value)}${currency === undefined ? '' : ` ${currency}`}`;

const times = (count: number): string => (Math.abs(count - 1) < 0.05 ? 'once' : `${amount(count)} times`);
const kWh = (wh: number): string => `${amount(wh / 1000)} kWh`;
const kW = (watts: number): string => `${amount(watts / 1000)} kW`;
const fuel = (litres: number, system: 'metric' | 'us'): string =>
  system === 'us' ? `${amount(litres / litresPerGallon)} gal` : `${amount(litres)} L`;

const mass = (kg: number, system: 'metric' | 'us'): string =>
  system === 'us' ? `${amount(kg / 0.45359237)} lb` : `${amount(kg)} kg`;

/** Three significant digits, no exponent. */
const price = (value: number): string =>
  Math.abs(value) >= 99.95 || Math.abs(value) < 5e-4 ? value.toFixed(0) : String(Number(value.toPrecision(3)));

/** An amount in a sentence: two significant digits below 10, whole numbers from there on. */
export const amount = (value: number): string =>
  Math.abs(value) >= 9.95 || Math.abs(value) < 5e-4 ? value.toFixed(0) : String(Number(value.toPrecision(2)));
