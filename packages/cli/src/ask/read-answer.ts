import { parseQuantity } from '@wintergap/quantity';

/** An answer that is not what was asked for. */
const expected = (found: string, what: string): Error => new Error(`found "${found}", expected ${what}`);

/** Parts of an answer that stand between commas; in `2 kW, pole` two. */
export const partsOf = (answer: string): string[] =>
  answer
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** A coordinate in degrees: `-92.2`, `92.2 W`, `46°54' N`. */
function degrees(text: string, most: number, minus: RegExp, plus: RegExp): number {
  const match = /^([+-]?\d+(?:\.\d+)?)\s*(?:°|deg|d)?\s*(?:(\d+(?:\.\d+)?)\s*['′]\s*)?([NSEW])?$/i.exec(text);
  const letter = match?.[3] ?? '';
  const size = match ? Math.abs(Number(match[1])) + Number(match[2] ?? 0) / 60 : Number.NaN;
  const rightLetter = letter === '' || minus.test(letter) || plus.test(letter);
  if (!match || !rightLetter || !(size <= most)) {
    const letters = most === 90 ? 'N or S' : 'E or W';
    throw expected(text, `degrees from -${most} to ${most}, or with ${letters}`);
  }
  return (match[1]!.startsWith('-') || minus.test(letter) ? -1 : 1) * Number(size.toFixed(4));
}

export interface PlaceAnswer {
  latitude: number;
  longitude: number;
  elevationM: number;
}

/** `46.9, -92.2, 430 m`, or `33.4 S, 70.6 W`; without an elevation that of the sea. */
export function readPlace(answer: string): PlaceAnswer {
  const [latitude, longitude, elevation = '0 m', ...more] = partsOf(answer);
  if (latitude === undefined || longitude === undefined || more.length > 0) {
    throw expected(answer, 'latitude, longitude and elevation between commas, such as 46.9, -92.2, 430 m');
  }
  const place = {
    latitude: degrees(latitude, 90, /s/i, /n/i),
    longitude: degrees(longitude, 180, /w/i, /e/i),
    elevationM: parseQuantity(elevation, 'length'),
  };
  if (!(place.elevationM >= -450 && place.elevationM <= 6000)) throw expected(elevation, '-450 m to 6000 m');
  return place;
}

/** Hours that local standard time is ahead of UTC: `-6`, `+5:30`, `-6 h`. */
export function readUtcOffset(answer: string): number {
  const match = /^(?:UTC)?\s*([+-]?)(\d{1,2})(?::(\d{2})|(\.\d+))?\s*h?$/i.exec(answer);
  const hours = match ? Number(match[2]) + Number(match[3] ?? 0) / 60 + Number(match[4] ?? 0) : Number.NaN;
  const offset = match?.[1] === '-' ? -hours : hours;
  if (!(offset >= -12 && offset <= 14)) throw expected(answer, 'hours from -12 to 14, such as -6 or +5:30');
  return offset;
}

/** Twelve numbers, January first, each within limits. */
export function readTwelve(answer: string, min: number, max: number): number[] {
  const words = answer.split(/[\s,;]+/).filter((word) => word !== '');
  const numbers = words.map(Number);
  if (numbers.length !== 12) throw new Error(`found ${numbers.length} values, expected twelve, January first`);
  const wrong = numbers.findIndex((number) => !(number >= min && number <= max));
  if (wrong >= 0) throw expected(words[wrong]!, `a number from ${min} to ${max}`);
  return numbers;
}

/** The one of several words that an answer means, by its beginning. */
export function readWord<Word extends string>(answer: string, words: readonly Word[]): Word {
  const meant = words.filter((word) => word.startsWith(answer.toLowerCase()));
  if (meant.length === 1) return meant[0]!;
  throw expected(answer, `one of ${words.join(', ')}`);
}

/**
 * The parts of an answer: those that begin with a digit are the size, the others a word. What is left out is taken from
 * the usual answer.
 */
export function sizeAndWord(answer: string, usual: string): { size: string; word: string } {
  const isSize = (part: string) => /^[\d.]/.test(part);
  const pick = (want: boolean) =>
    partsOf(answer).find((part) => isSize(part) === want) ?? partsOf(usual).find((part) => isSize(part) === want) ?? '';
  if (partsOf(answer).length > 2) throw expected(answer, `a size and a word, such as ${usual}`);
  return { size: pick(true), word: pick(false) };
}
