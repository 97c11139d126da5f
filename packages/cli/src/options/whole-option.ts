import { InputError } from '../input-error.js';

/**
 * The whole number that an option gives.
 *
 * @throws InputError when it is none from `min` to `max`
 */
export function wholeOption(option: string, text: string, min: number, max: number): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isInteger(value) && value >= min && value <= max) return value;
  throw new InputError(`${option} ${text}: expected a whole number from ${min} to ${max}`);
}
