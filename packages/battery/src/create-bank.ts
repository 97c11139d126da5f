import type { Bank } from './bank.js';
import { type BankSettings, resolveBank } from './bank-settings.js';
import { leadAcidBank } from './lead-acid/bank.js';
import { lithiumBank } from './lithium/bank.js';

/**
 * Makes a bank. The tables it needs depend on the kind of cell and its set voltages only, and are kept between calls.
 *
 * @throws RangeError for settings out of range
 */
export function createBank(settings: BankSettings): Bank {
  const resolved = resolveBank(settings);
  return resolved.chemistry === 'lithium-iron-phosphate' ? lithiumBank(resolved) : leadAcidBank(resolved);
}
