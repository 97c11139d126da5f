import { type HandArray, type HandArrayQuestion, handArray } from './array.js';
import { type HandBank, type HandBankQuestion, handBank } from './bank.js';

export interface HandQuestion {
  bank: HandBankQuestion;
  array: HandArrayQuestion;
}

/** What the rule of thumb would install. */
export interface HandAnswer {
  bank: HandBank;
  /** `null` when the dullest month has no sun at all. */
  array: HandArray | null;
}

/**
 * The customary hand method for a place without an engine: bank by IEEE 1013, array by IEEE 1562, both in our own
 * words and from memory. It knows twelve monthly means and a few factors, no hours, no snow, no engine: useful as a
 * second opinion, not as a result.
 *
 * @throws OutOfRangeError naming the first value out of range
 */
export function handMethod({ bank, array }: HandQuestion): HandAnswer {
  return { bank: handBank(bank), array: handArray(array) };
}
