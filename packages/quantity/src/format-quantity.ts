import { type Dimension, dimensionFacts } from './dimension.js';
import { decimalText } from './number-text.js';
import { toFahrenheit } from './temperature.js';
import { unitFactors } from './unit-factors.js';
import { gaugeNear } from './wire-gauge.js';

export type UnitSystem = 'metric' | 'us';

/** Units a value is shown in, smallest first; the largest one that leaves at least 1 is used. */
const shownMetric: Partial<Record<Dimension, readonly string[]>> = {
  power: ['W', 'kW'],
  energy: ['Wh', 'kWh', 'MWh'],
  resistance: ['mOhm', 'ohm'],
  depth: ['cm'],
  fractionPerK: ['%/K'],
  fractionPerTime: ['%/month'],
  fraction: ['%'],
  irradiance: ['W/m2'],
};

const shownUs: Partial<Record<Dimension, readonly string[]>> = {
  length: ['ft'],
  depth: ['in'],
  precipitation: ['in'],
  area: ['ft2'],
  mass: ['lb'],
  temperatureDifference: ['degF'],
  volume: ['gal'],
  volumeFlow: ['gal/h'],
  massFlow: ['lb/h'],
  speed: ['mph'],
  heatLoss: ['BTU/(h*degF)'],
  heatCapacity: ['BTU/degF'],
  density: ['lb/ft3'],
  pressure: ['psi'],
  energyPerVolume: ['kWh/gal'],
  volumePerEnergy: ['gal/kWh'],
  resistancePerLength: ['ohm/kft'],
};

const pricedUs: Partial<Record<Dimension, readonly [string, Dimension]>> = {
  pricePerVolume: ['gal', 'volume'],
  pricePerMass: ['lb', 'mass'],
  pricePerLength: ['ft', 'length'],
  pricePerArea: ['ft2', 'area'],
};

/**
 * A canonical value as text for people: `formatQuantity(5.4864, 'length', 'us')` is `18 ft`.
 * The text can be read back by `parseQuantity`, to the digits shown.
 *
 * @param value in the canonical unit of the dimension
 * @param digits significant digits, 3 unless given; digits before the point are never dropped
 */
export function formatQuantity(value: number, dimension: Dimension, system: UnitSystem, digits = 3): string {
  const show = (amount: number, unit: string): string => `${decimalText(amount, digits)} ${unit}`;
  if (dimension === 'temperature') {
    return system === 'us' ? show(toFahrenheit(value), 'degF') : show(value, 'degC');
  }
  if (dimension === 'conductorArea' && system === 'us') {
    return gaugeNear(value) ?? show(value / unitFactors('conductorArea').get('kcmil')!, 'kcmil');
  }
  const priced = system === 'us' ? pricedUs[dimension] : undefined;
  if (priced) return show(value * unitFactors(priced[1]).get(priced[0])!, `/${priced[0]}`);

  const units = (system === 'us' ? shownUs[dimension] : undefined) ?? shownMetric[dimension];
  if (!units) return show(value, dimensionFacts(dimension).unit);
  const factors = unitFactors(dimension);
  let unit = units[0]!;
  for (const larger of units) if (Math.abs(value) >= factors.get(larger)!) unit = larger;
  return show(value / factors.get(unit)!, unit.replace('*', ' '));
}
