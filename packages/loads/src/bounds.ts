/** Throws unless `value` is a finite number from `min` to `max`. */
export function mustLie(what: string, value: number, min: number, max: number): void {
  if (!(value >= min && value <= max) || !Number.isFinite(value)) {
    const allowed = max === Number.MAX_VALUE ? `${min} or more` : `${min} to ${max}`;
    throw new RangeError(`${what} must be ${allowed}, got ${value}`);
  }
}

/** Throws unless `hourly` holds 8760 numbers from `min` to `max`. */
export function mustBeHourly(what: string, hourly: Float64Array, min: number, max: number): void {
  if (hourly.length !== 8760) throw new RangeError(`${what} must hold 8760 hours, got ${hourly.length}`);
  for (let h = 0; h < 8760; h++) {
    const value = hourly[h]!;
    if (!(value >= min && value <= max)) mustLie(`${what} in hour ${h}`, value, min, max);
  }
}
