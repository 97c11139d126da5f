import { maximumPower } from './operating-point.js';
import { type ModuleParameters, referenceWm2 } from './translation.js';

/**
 * Change of maximum power with cell temperature at 1000 W/m2 and 25 degC, fraction per K, e.g. -0.0039. It follows
 * from the five parameters: to be compared with the sheet's `powerPerK`, which none of the five conditions uses.
 */
export function powerCoefficient(parameters: ModuleParameters): number {
  const point = new Float64Array(3);
  maximumPower(parameters, referenceWm2, 26, point);
  const warm = point[0]!;
  maximumPower(parameters, referenceWm2, 24, point);
  const cool = point[0]!;
  maximumPower(parameters, referenceWm2, 25, point);
  return (warm - cool) / (2 * point[0]!);
}
