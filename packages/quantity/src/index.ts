export { canonicalUnit, type Dimension, type DimensionFacts, dimensionFacts } from './dimension.js';
export { formatQuantity, type UnitSystem } from './format-quantity.js';
export { likelySpellings } from './likely-spellings.js';
export { parseQuantity } from './parse-quantity.js';
export { QuantityError } from './quantity-error.js';
export { gaugeAreaMm2 } from './wire-gauge.js';
