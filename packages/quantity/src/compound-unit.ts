import { unitLibrary } from '#unit-library';

/** `BTU/(h*degF)` in the form the library reads: one slash, kelvin as `degK`, no parentheses. */
function libraryUnit(unit: string): string {
  const [top = '', ...bottom] = unit.replace(/[()]/g, '').split('/');
  const joined = bottom.length > 0 ? `${top === '' ? '1' : top}/${bottom.join('*')}` : top;
  return joined.replace(/\bK\b/g, 'degK').replace(/\bC\b/g, 'degC').replace(/\bF\b/g, 'degF');
}

/** What became of a unit that is not in the table. */
export type CompoundUnit = { kind: 'factor'; factor: number } | { kind: 'other'; name: string } | { kind: 'unknown' };

/** How many of `canonical` a unit is, by js-quantities; or what else it measures; or that it is no unit. */
export function compoundUnit(unit: string, canonical: string): CompoundUnit {
  // Digits may only be exponents: `20 h 5 A` must not pass as a unit.
  if (!/^[A-Za-z*/()\-'"]+[0-9]?(?:[A-Za-z*/()\-'"]+[0-9]?)*$/.test(unit)) return { kind: 'unknown' };
  try {
    const quantity = unitLibrary()(`1 ${libraryUnit(unit)}`);
    const target = libraryUnit(canonical);
    if (target !== '' && quantity.isCompatible(target)) {
      const factor = quantity.to(target).scalar;
      return Number.isFinite(factor) && factor > 0 ? { kind: 'factor', factor } : { kind: 'unknown' };
    }
    const kind = quantity.kind();
    return kind === undefined || kind === 'unitless' || kind === ''
      ? { kind: 'unknown' }
      : { kind: 'other', name: kind.replaceAll('_', ' ') };
  } catch {
    return { kind: 'unknown' };
  }
}
