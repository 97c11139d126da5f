/**
 * A number as short text without an exponent: `digits` significant digits, but no digit before the point dropped.
 * 1410.76 with 3 digits is `1411`, 0.012345 is `0.0123`.
 */
export function decimalText(value: number, digits: number): string {
  if (value === 0) return '0';
  if (!Number.isFinite(value)) return String(value);
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(20, Math.max(0, digits - 1 - magnitude));
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}
