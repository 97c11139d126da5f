import { closest, distance } from 'fastest-levenshtein';

/**
 * The known word that was probably meant by a mistyped one: none when none is near, since a far-fetched suggestion
 * leads astray. Near is one letter wrong in three, whatever the capitals.
 */
export function nearestWord(written: string, known: readonly string[]): string | null {
  if (known.length === 0) return null;
  const plain = written.toLowerCase();
  const best = closest(
    plain,
    known.map((word) => word.toLowerCase()),
  );
  if (distance(plain, best) > Math.max(1, Math.floor(plain.length / 3))) return null;
  return known.find((word) => word.toLowerCase() === best)!;
}

/** The nearest word as the end of a message: `; did you mean "voc"?`, or nothing. */
export function nearestHint(written: string, known: readonly string[]): string {
  const near = nearestWord(written, known);
  return near === null ? '' : `; did you mean "${near}"?`;
}

/** The words that a message suggests by `nearestHint`. */
export const wordsMeant = (message: string): string[] =>
  [...message.matchAll(/; did you mean "([^"]*)"\?/g)].map(([, word]) => word!);
