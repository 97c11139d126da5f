import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { mergeVariant } from '../variants.js';
import { changedValues } from './changed-values.js';
import { aroundDesign } from './design.js';
import { siteSchema } from './site-schema.js';

type Written = Record<string, unknown>;

const examples = new URL('../../../../examples/', import.meta.url).pathname;
const files = [
  'kettle-pond',
  'controllers',
  'habits',
  'places/two-engines',
  'places/lithium-cabin',
  'places/mast-over-trees',
];
const contents = files.map((name) => parse(readFileSync(join(examples, `${name}.yaml`), 'utf8')) as Written);
const designOf = (content: Written): Written =>
  Object.fromEntries(Object.entries(content).filter(([key]) => !aroundDesign.includes(key)));
const known = contents.map((content) => {
  const written = designOf(content);
  return { written, values: siteSchema.parse(written) };
});

/** To the order of the keys: they stand so in what is written of a design. */
const saysTheSame = (written: Written, base: (typeof known)[number]) => {
  const whole = siteSchema.safeParse(written);
  const changed = changedValues(written, base);
  expect(JSON.stringify(changed)).toBe(whole.success ? JSON.stringify(whole.data) : 'null');
  return whole.success;
};

test('the variants of the examples have the values that they have when read whole', () => {
  const variants = contents.flatMap(({ variants = {} }, i) =>
    Object.values(variants as Written).map((change) => ({ base: known[i]!, change })),
  );
  expect(variants.length).toBeGreaterThan(8);
  for (const { base, change } of variants) {
    expect(saysTheSame(mergeVariant(base.written, change) as Written, base)).toBe(true);
  }
});

test('what is read in parts is right, and wrong, where it is so when read whole', () => {
  const sections = [...new Set(known.flatMap(({ written }) => Object.keys(written))), 'generater'];
  const wrong = [null, 7, 'x', {}, [], [{ name: 'a' }], { from: '20-20' }];
  const section = fc.record({
    key: fc.constantFrom(...sections),
    from: fc.nat(known.length - 1),
    // Mostly what another site has there, which may or may not fit.
    other: fc.option(fc.constantFrom(...wrong), { freq: 8 }),
    isTaken: fc.nat(5),
  });
  const found = { right: 0, wrong: 0 };
  fc.assert(
    fc.property(fc.nat(known.length - 1), fc.array(section, { maxLength: 3 }), (at, changes) => {
      const base = known[at]!;
      const written = { ...base.written };
      for (const { key, from, other, isTaken } of changes) {
        const value = isTaken === 0 ? undefined : (other ?? known[from]!.written[key]);
        if (value === undefined) delete written[key];
        else written[key] = value;
      }
      found[saysTheSame(written, base) ? 'right' : 'wrong'] += 1;
    }),
    { numRuns: 300 },
  );
  expect(Math.min(found.right, found.wrong)).toBeGreaterThan(20);
});
