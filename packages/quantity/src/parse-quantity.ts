import { compoundUnit } from './compound-unit.js';
import { type Dimension, dimensionFacts, dimensions } from './dimension.js';
import { likelySpellings } from './likely-spellings.js';
import { nearestUnits } from './nearest-unit.js';
import { pricedBy } from './priced-by.js';
import { QuantityError } from './quantity-error.js';
import { toCelsius } from './temperature.js';
import { plainUnit, unitFactors } from './unit-factors.js';
import { gaugeAreaMm2, parseGauge } from './wire-gauge.js';

const feetAndInches = /^(\d+(?:\.\d+)?)\s*(?:ft|')\s*(\d+(?:\.\d+)?)\s*(?:in|")$/;
const numberThenUnit = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;

/** No number with its unit is longer: what is, is not quoted whole. */
const longestQuantity = 60;

/** Dimensions whose canonical unit is the natural one to write bare. */
const bareAllowed = (dimension: Dimension) => dimension === 'fraction' || dimension === 'angle';

/**
 * Turns unit-bearing text into a number in the canonical unit of a dimension: `18 ft` as a length is 5.4864.
 * Fractions may be bare (`0.85`) or in percent; angles may be bare degrees; everything else needs a unit.
 *
 * @throws QuantityError saying what was found and how it may be written
 */
export function parseQuantity(text: string | number, dimension: Dimension): number {
  const found = String(text).trim();
  if (found.length > longestQuantity) {
    throw new QuantityError(
      `found a text of ${found.length} characters that begins "${found.slice(0, 20)}", where ${dimensionFacts(dimension).name} is needed`,
      found.slice(0, longestQuantity),
      dimension,
      dimensionFacts(dimension).name,
      [],
    );
  }
  const fail = (message: string, value?: number, offer: 'write' | 'such as' = 'write', meant?: string[]): never => {
    const examples = meant ?? likelySpellings(value, dimension);
    const write = examples.length > 0 ? `${offer === 'write' ? '; write' : ', such as'} ${examples.join(' or ')}` : '';
    throw new QuantityError(`${message}${write}`, found, dimension, dimensionFacts(dimension).name, examples);
  };

  if (dimension === 'conductorArea' && typeof text === 'string') {
    const gauge = parseGauge(found);
    if (gauge !== null) return gaugeAreaMm2(gauge);
  }

  const plain = found.replace(/^[−–]/, '-').replace(/\u00a0/g, ' ');
  if (plain === '') return fail(`nothing found where ${dimensionFacts(dimension).name} is needed`);
  const commaMatch = /^[+-]?\d+(,\d+)+(\.\d+)?/.exec(plain);
  if (commaMatch) return failComma(found, commaMatch[0], plain.slice(commaMatch[0].length).trim(), dimension);
  const mixed = dimension === 'length' || dimension === 'depth' ? feetAndInches.exec(plain) : null;
  if (mixed) return Number(mixed[1]) * 0.3048 + Number(mixed[2]) * 0.0254;
  const withoutMoney = pricedBy[dimension] ? plain.replace(/^(?:[$€£]|[A-Z]{3}\b)\s*/, '') : plain;
  const match = numberThenUnit.exec(withoutMoney);
  if (!match) return fail(`"${found}" does not start with a number where ${dimensionFacts(dimension).name} is needed`);
  const value = Number(match[1]);
  if (!Number.isFinite(value)) return fail(`${found} is too large a number`);
  const unit = plainUnit(match[2]!);
  if (/^\d/.test(unit)) return fail(`"${found}" has two numbers; write thousands without a space`);

  if (unit === '') {
    if (!bareAllowed(dimension)) return fail(`${found} has no unit`, value);
    if (dimension === 'fraction' && Math.abs(value) > 1) return fail(`${found} is not a fraction of one`, value);
    return value;
  }
  const canonical = toCanonical(value, unit, dimension);
  if (canonical !== null) {
    if (!Number.isFinite(canonical)) return fail(`${found} is too large a number`);
    return canonical;
  }
  const { message, meant } = explainUnit(found, match[2]!, unit, dimension);
  // Without the unit that was meant the number says nothing: 24 kWh are not 24 Ah.
  if (meant.length === 0) return fail(message, undefined, 'such as');
  return fail(
    message,
    undefined,
    'write',
    meant.map((spelling) => `${match[1]} ${spelling}`),
  );
}

/** The value in canonical units, or `null` when the unit is not one of this dimension. */
function toCanonical(value: number, unit: string, dimension: Dimension): number | null {
  if (dimension === 'temperature') return toCelsius(value, unit);
  const priced = pricedBy[dimension];
  if (priced) {
    const per = /^(?:[A-Z]{3}|[$€£]|kr)?\*?(?:\/|per\*)\*?(.+)$/.exec(unit);
    const amount = per && toCanonical(1, per[1]!, priced[0]);
    return amount ? (value / amount) * priced[1] : null;
  }
  const factor = unitFactors(dimension).get(unit);
  if (factor !== undefined) return value * factor;
  if (dimension === 'fraction' || dimension === 'fractionPerK' || refusedUnits.has(unit)) return null;
  const compound = compoundUnit(unit, dimensionFacts(dimension).unit);
  return compound.kind === 'factor' ? value * compound.factor : null;
}

/** A map, not an object: `constructor` and the like are in every object. */
const refusedUnits: ReadonlyMap<string, string> = new Map([
  ['VA', 'an apparent power; the real power is needed'],
  ['kVA', 'an apparent power; the real power is needed'],
  ['VAh', 'an apparent energy; the real energy is needed'],
  ['kVAh', 'an apparent energy; the real energy is needed'],
]);

/** Says why a unit does not do: it is another kind of quantity, a misspelled unit, or nothing known. */
function explainUnit(
  found: string,
  written: string,
  unit: string,
  dimension: Dimension,
): { message: string; meant: string[] } {
  const say = (message: string) => ({ message, meant: [] });
  const needed = dimensionFacts(dimension).name;
  const unlike = (kind: string) => say(`${found} ${kind}, but ${needed} is needed here`);
  const refused = refusedUnits.get(unit);
  if (refused) return say(`${found} is ${refused}`);
  // A currency before the slash is no part of the unit.
  const near = nearestUnits(pricedBy[dimension] ? unit.replace(/^[^/]*(?=\/)/, '') : unit, dimension);
  const capitalsAmiss = near?.near.toLowerCase() === unit.toLowerCase();
  if (near && capitalsAmiss && near.dimension === dimension) {
    return { message: `${found} has the unit ${written}, meaning ${near.write.join(' or ')}?`, meant: near.write };
  }
  const other = (Object.keys(dimensions) as Dimension[]).find((candidate) => unitFactors(candidate).has(unit));
  if (other) return unlike(`is ${dimensionFacts(other).name}`);
  if (near && capitalsAmiss) return unlike(`is ${dimensionFacts(near.dimension).name}`);
  const price = (Object.keys(pricedBy) as Dimension[]).find((candidate) => toCanonical(1, unit, candidate) !== null);
  if (price) return unlike(`is ${dimensionFacts(price).name}`);
  if (toCelsius(0, unit) !== null) return unlike('is a temperature');
  if (dimension !== 'conductorArea' && parseGauge(found) !== null) return unlike('is a conductor size');
  const compound = compoundUnit(unit, '');
  if (compound.kind === 'other') return unlike(`measures ${compound.name}`);
  const unknown = `${found} has the unknown unit ${written}`;
  if (near?.dimension === dimension) return { message: `${unknown}, meaning ${near.near}?`, meant: near.write };
  if (near)
    return say(`${unknown}, and ${near.near} is ${dimensionFacts(near.dimension).name}; ${needed} is needed here`);
  return say(`${unknown}, and ${needed} is needed here`);
}

/** `1,5` may be one and a half, `1,000` a thousand: neither is guessed. */
function failComma(found: string, number: string, unit: string, dimension: Dimension): never {
  const joined = number.replaceAll(',', '');
  const readings = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(number) ? [joined] : [];
  if (/^[+-]?\d+,\d+$/.test(number)) readings.push(number.replace(',', '.'));
  const examples = (readings.length > 0 ? readings : [joined]).map((reading) => `${reading} ${unit}`.trim());
  throw new QuantityError(
    `${found} has a comma in the number; use a point for decimals and nothing for thousands: write ${examples.join(' or ')}`,
    found,
    dimension,
    dimensionFacts(dimension).name,
    examples,
  );
}
