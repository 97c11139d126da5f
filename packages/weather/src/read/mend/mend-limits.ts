import { monthInWords, monthSpan } from '@wintergap/ground';
import type { Gap } from './fill-gaps.js';

/** Of a month's hours as many may be missing and still be filled: beyond, the month is not this file's any more. */
export const mostMended = { irradiance: 0.2, air: 0.4, wind: 0.4 } as const;

/** The first month of which more hours lie in gaps than may be filled, in words; `null` when none does. */
export function tooMuchMissing(gaps: readonly Gap[], most: number): string | null {
  const missing = new Float64Array(12);
  for (let month = 0; month < 12; month++) {
    const { fromHour, toHour, days } = monthSpan(month);
    for (const { start, hours } of gaps) {
      missing[month]! += Math.max(0, Math.min(toHour, start + hours) - Math.max(fromHour, start));
    }
    if (missing[month]! > most * days * 24) {
      return `${missing[month]} of ${days * 24} hours of ${monthInWords(month + 1)}`;
    }
  }
  return null;
}
