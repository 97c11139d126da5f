import { expect, test } from 'vitest';
import { designRanges } from './ranges.js';

const ranges = designRanges('{ bank.capacity: 500..1000/250 Ah }');
/** What is wrong, with the place where it stands. */
const problems = (written: unknown) =>
  (ranges.safeParse(written).error?.issues ?? []).map(({ path, message }) => `${path.join('.')}: ${message}`);

test('a value, a range and a list of both are the values of an axis', () => {
  expect(ranges.parse({ a: 3, b: '2..4', c: ['2..3', 8], d: { kind: 'fixed' } })).toEqual({
    a: [3],
    b: [2, 3, 4],
    c: [2, 3, 8],
    d: [{ kind: 'fixed' }],
  });
});

test('a range that cannot be counted is told where it stands', () => {
  expect(problems({ strings: [2, '8..3'] })).toEqual([expect.stringMatching(/^strings\.1: found "8\.\.3"/)]);
  expect(problems({ strings: '8..3' })).toEqual([expect.stringMatching(/^strings: found "8\.\.3"/)]);
});

test('an axis without values and a value that is there twice are told', () => {
  expect(problems({ strings: [] })).toEqual([expect.stringMatching(/^strings: found no values/)]);
  expect(problems({ strings: null })).toEqual([expect.stringMatching(/^strings: found no values/)]);
  expect(problems({ strings: ['2..4', 3] })).toEqual(['strings: 3 is there twice; each value makes its own designs']);
  expect(problems({ mount: [{ tilt: 5 }, { tilt: 5 }] })).toHaveLength(1);
});

test('an axis holds ten thousand values and no more', () => {
  expect(problems({ strings: '1..10000' })).toEqual([]);
  expect(problems({ strings: ['1..10000', 20_000] })).toEqual(['strings: found 10001 values, expected at most 10000']);
});

test('a section that is no mapping, or an empty one, is told what it may look like', () => {
  expect(problems(7)).toEqual([': expected paths with their values, such as { bank.capacity: 500..1000/250 Ah }']);
  expect(problems({})).toEqual([': found no ranges, expected such as { bank.capacity: 500..1000/250 Ah }']);
});
