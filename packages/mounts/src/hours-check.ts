import { hoursPerYear } from '@wintergap/ground';

/** @throws RangeError unless there are 8760 numbers */
export function checkHours(name: string, values: Float64Array): void {
  if (values.length !== hoursPerYear) throw new RangeError(`${name} must have 8760 hours, got ${values.length}`);
  for (let h = 0; h < hoursPerYear; h++) {
    if (!Number.isFinite(values[h]!)) throw new RangeError(`${name} must be numbers, got ${values[h]} in hour ${h}`);
  }
}
