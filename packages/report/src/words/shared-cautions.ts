import type { Caution } from '@wintergap/tally';

/** A caution and, where several designs are shown, the names of those it holds for. */
export interface NamedCaution extends Caution {
  designs?: readonly string[];
}

interface CautionedDesign {
  name: string;
  result: { summary: { cautions: readonly Caution[] } };
}

/** Every caution once, in the order of the designs, with the names of those it holds for. */
export function sharedCautions(designs: readonly CautionedDesign[]): Required<NamedCaution>[] {
  const found = new Map<string, Caution & { designs: string[] }>();
  for (const { name, result } of designs) {
    for (const { code, text } of result.summary.cautions) {
      const key = `${code} ${text}`;
      const caution = found.get(key) ?? { code, text, designs: [] };
      caution.designs.push(name);
      found.set(key, caution);
    }
  }
  return [...found.values()];
}

/** `all designs`, or their names. */
export const designsInWords = (names: readonly string[], of: number): string =>
  names.length === of && of > 1 ? 'all designs' : names.join(', ');
