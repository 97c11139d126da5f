import type { Bank } from './bank.js';
import { type BankSettings, type ResolvedBank, resolveBank } from './bank-settings.js';
import type { CellKind } from './cell-traits.js';
import { leadAcidBank } from './lead-acid/bank.js';
import { lithiumBank } from './lithium/bank.js';

const bankOfKind: Readonly<Record<CellKind, (settings: ResolvedBank) => Bank>> = {
  'lead-acid': leadAcidBank,
  lithium: lithiumBank,
};

/**
 * Makes a bank. The tables it needs depend on the kind of cell and its set voltages only, and are kept between calls.
 *
 * @throws RangeError for settings out of range
 */
export function createBank(settings: BankSettings): Bank {
  const resolved = resolveBank(settings);
  return bankOfKind[resolved.defaults.traits.kind](resolved);
}
