export { canonicalUnit, type Dimension } from './dimension.js';
export { formatQuantity, type UnitSystem } from './format-quantity.js';
export { parseQuantity } from './parse-quantity.js';
export { QuantityError } from './quantity-error.js';
export { gaugeAreaMm2 } from './wire-gauge.js';
