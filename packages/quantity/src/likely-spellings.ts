import { type Dimension, dimensionFacts } from './dimension.js';
import { decimalText } from './number-text.js';
import { toFahrenheit } from './temperature.js';
import { unitFactors } from './unit-factors.js';

/** Amounts to show when nothing usable was written, in the first likely unit. */
const usual: Partial<Record<Dimension, number>> = {
  power: 300,
  energy: 1500,
  charge: 1000,
  length: 4,
  conductorArea: 16,
  temperature: -18,
  duration: 12,
  fraction: 85,
  fractionPerK: -0.35,
  voltage: 24,
  irradiation: 3.2,
};

const priceOf: Partial<Record<Dimension, Dimension>> = {
  pricePerVolume: 'volume',
  pricePerMass: 'mass',
  pricePerEnergy: 'energy',
  pricePerPower: 'power',
  pricePerLength: 'length',
  pricePerArea: 'area',
  pricePerTime: 'duration',
};

/**
 * Two or three ways a value could have been written, the same amount each time: 430 as a length gives
 * `430 m` and `1411 ft`. A value without a unit is taken to be in the first likely unit.
 */
export function likelySpellings(value: number | undefined, dimension: Dimension): string[] {
  const amount = value ?? usual[dimension] ?? 10;
  const { likely } = dimensionFacts(dimension);
  if (dimension === 'conductorArea') return [`${decimalText(amount, 4)} mm2`, `${gaugeLike(amount)} AWG`];
  if (dimension === 'temperature') {
    return [`${decimalText(amount, 4)} degC`, `${decimalText(toFahrenheit(amount), 4)} degF`];
  }
  if (dimension === 'fraction') {
    return Math.abs(amount) > 1
      ? [`${decimalText(amount, 4)} %`, decimalText(amount / 100, 4)]
      : [decimalText(amount, 4), `${decimalText(amount * 100, 4)} %`];
  }
  const priced = priceOf[dimension];
  const factorOf = (unit: string): number =>
    priced ? 1 / (unitFactors(priced).get(unit.slice(1)) ?? 1) : (unitFactors(dimension).get(unit) ?? 1);
  const first = factorOf(likely[0]!);
  return likely.map((unit) => `${decimalText((amount * first) / factorOf(unit), 4)} ${unit}`);
}

// A bare conductor size is as likely a gauge number as an area: the same number is offered, if it is one.
const gaugeLike = (amount: number): number =>
  Number.isInteger(amount) && amount >= 1 && amount <= 40 && amount !== 16 ? amount : 6;
