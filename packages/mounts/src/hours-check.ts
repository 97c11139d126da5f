import { hoursPerYear, OutOfRangeError } from '@wintergap/ground';

/** @throws OutOfRangeError unless there are 8760 numbers */
export function checkHours(name: string, values: Float64Array): void {
  if (values.length !== hoursPerYear) throw new OutOfRangeError(`${name} must have 8760 hours, got ${values.length}`);
  for (let h = 0; h < hoursPerYear; h++) {
    if (!Number.isFinite(values[h]!))
      throw new OutOfRangeError(`${name} must be numbers, got ${values[h]} in hour ${h}`);
  }
}
