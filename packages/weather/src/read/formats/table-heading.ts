import { OutOfRangeError } from '@wintergap/ground';
import { canonicalUnit, type Dimension, parseQuantity, QuantityError } from '@wintergap/quantity';
import type { ColumnName } from '../hour-columns.js';

/** What a column of the plain table is: a weather column with its conversion, or the time, or not ours. */
export type TableHeading =
  | { kind: 'column'; name: ColumnName; factor: number; offset: number }
  | { kind: 'time'; ends: boolean }
  /** 0 where the hour was measured, 1 where a gap was bridged, 2 where it was filled from other days. */
  | { kind: 'mended' }
  | { kind: 'other'; text: string };

const names: Readonly<Record<string, ColumnName>> = {
  ghi: 'ghi',
  global: 'ghi',
  'global horizontal': 'ghi',
  'global horizontal irradiance': 'ghi',
  dni: 'dni',
  beam: 'dni',
  'direct normal': 'dni',
  'direct normal irradiance': 'dni',
  dhi: 'dhi',
  diffuse: 'dhi',
  'diffuse horizontal': 'dhi',
  'diffuse horizontal irradiance': 'dhi',
  air: 'air',
  'air temperature': 'air',
  temperature: 'air',
  'dry bulb': 'air',
  wind: 'wind',
  'wind speed': 'wind',
  'snow depth': 'snow depth',
  snow: 'snow depth',
  precipitation: 'precipitation',
  precip: 'precipitation',
  rain: 'precipitation',
  albedo: 'albedo',
  'relative humidity': 'relative humidity',
  humidity: 'relative humidity',
  rh: 'relative humidity',
  pressure: 'pressure',
  'air pressure': 'pressure',
};

const dimensionOf: Readonly<Record<ColumnName, Dimension>> = {
  ghi: 'irradiance',
  dni: 'irradiance',
  dhi: 'irradiance',
  air: 'temperature',
  'air min': 'temperature',
  'air max': 'temperature',
  wind: 'speed',
  'snow depth': 'depth',
  precipitation: 'precipitation',
  albedo: 'fraction',
  'relative humidity': 'fraction',
  pressure: 'pressure',
};

/**
 * Reads one heading, such as `air [degF]`: a name in any case, the unit in brackets. Fractions may go without.
 *
 * @throws OutOfRangeError when a known name lacks its unit or has one of another kind
 */
export function tableHeading(text: string): TableHeading {
  const match = /^\s*([^[(]*?)\s*(?:[[(]\s*([^\])]*?)\s*[\])])?\s*$/.exec(text);
  const title = (match?.[1] ?? '').toLowerCase().replace(/[\s_-]+/g, ' ');
  if (title === 'time' || title === 'time starts') return { kind: 'time', ends: false };
  if (title === 'mended') return { kind: 'mended' };
  if (title === 'time ends') return { kind: 'time', ends: true };
  const name = Object.hasOwn(names, title) ? names[title] : undefined;
  if (!name) return { kind: 'other', text: text.trim() };
  const unit = match?.[2] ?? '';
  const dimension = dimensionOf[name];
  if (unit === '' && dimension === 'fraction') return { kind: 'column', name, factor: 1, offset: 0 };
  if (unit === '') {
    throw new OutOfRangeError(`the heading "${text.trim()}" has no unit; write ${name} [${canonicalUnit(dimension)}]`);
  }
  try {
    const [offset, one] = conversion(unit, dimension);
    return { kind: 'column', name, factor: one - offset, offset };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new OutOfRangeError(
      `the heading "${text.trim()}" has the unit "${unit}", expected ${error.expected}, such as ${name} [${canonicalUnit(dimension)}]`,
    );
  }
}

/** What 0 and 1 of a unit are in canonical units. An hour's energy, such as Wh/m2, is its mean irradiance. */
function conversion(unit: string, dimension: Dimension): [number, number] {
  if (dimension === 'irradiance' && /^(?:[kM]?Wh|[kM]?J|BTU)\s*\//i.test(unit)) {
    return [0, parseQuantity(`1 ${unit}`, 'irradiation') * 1000];
  }
  return [parseQuantity(`0 ${unit}`, dimension), parseQuantity(`1 ${unit}`, dimension)];
}
