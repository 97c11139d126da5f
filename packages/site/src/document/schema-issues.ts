import type * as z from 'zod';
import { wordsMeant } from './nearest-word.js';

/** One thing wrong with a value: the keys that lead there, and what to say of it. */
export interface ValueProblem {
  path: PropertyKey[];
  /** The keys to where it stands: those of the first unknown key for a mapping that has one. */
  at: PropertyKey[];
  message: string;
}

/** All that a schema found wrong, each in its plainest words. */
export function valueProblems(error: z.ZodError): ValueProblem[] {
  const problems = error.issues.flatMap((issue) => leaves(issue));
  const miswritten = problems.flatMap(({ path, message }) => wordsMeant(message).map((key) => [...path, key]));
  // Where a key is miswritten the right one is missing: that is the same slip.
  return problems.filter(
    ({ path, message }) => !/\bnothing, expected/.test(message) || !miswritten.some(leadsTo(path)),
  );
}

const leadsTo = (path: PropertyKey[]) => (keys: PropertyKey[]) => keys.every((key, i) => key === path[i]);

/** The plainest messages of an issue: of a union, those of the alternative that came furthest. */
function leaves(issue: z.core.$ZodIssue, prefix: PropertyKey[] = []): ValueProblem[] {
  const path = [...prefix, ...issue.path];
  if (issue.code === 'unrecognized_keys') {
    return [{ path, at: [...path, ...issue.keys.slice(0, 1)], message: issue.message }];
  }
  if (issue.code !== 'invalid_union' || issue.errors.length === 0)
    return [{ path, at: path, message: inPlainWords(issue.message) }];
  const deepest = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0]!;
  if (depth(deepest) === 0 && issue.message !== 'Invalid input')
    return [{ path, at: path, message: inPlainWords(issue.message) }];
  return deepest.flatMap((inner) => leaves(inner, path));
}

const depth = (issues: z.core.$ZodIssue[]) => Math.max(0, ...issues.map((issue) => issue.path.length));

const kinds: Readonly<Record<string, string>> = {
  array: 'a list such as [8, 18]',
  tuple: 'a list such as [8, 18]',
  object: 'a mapping of keys to values',
  boolean: 'true or false',
  string: 'a text',
  number: 'a number',
  undefined: 'nothing',
  null: 'nothing',
};
const kind = (word: string): string => (Object.hasOwn(kinds, word) ? kinds[word]! : `a ${word}`);

/** What the schema library says where a key has no words of its own, in those of the others. */
function inPlainWords(message: string): string {
  const [, expected, received] = /^Invalid input: expected (\w+), received (\w+)$/.exec(message) ?? [];
  if (expected && received) return `found ${kind(received)}, expected ${kind(expected)}`;
  const plain = message.replace(/^Invalid input: (?=expected)/, '');
  return plain.replace(
    /^Too small: expected array to have >=(\d+) items?$/,
    'found fewer items than $1, expected at least $1',
  );
}
