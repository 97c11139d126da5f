/** An amount in a sentence: two significant digits below 10, whole numbers from there on. */
export const amount = (value: number): string =>
  Math.abs(value) >= 9.95 || Math.abs(value) < 5e-4 ? value.toFixed(0) : String(Number(value.toPrecision(2)));
