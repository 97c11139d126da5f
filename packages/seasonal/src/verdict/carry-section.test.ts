import { SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { readCarryQuestion } from './carry-question.js';
import { readCarry, technologiesOf } from './carry-section.js';

const read = (carry: string) => readCarry(inventedSite(`\ncarry: ${carry}\n`));

test('without a carry key, or with the one word, the store is hydrogen by published ranges', () => {
  const plain = readCarry(inventedSite());
  expect(read('{ store: hydrogen }')).toEqual(plain);
  const { tried, judged } = technologiesOf(plain.store);
  expect(tried.map(({ name }) => name)).toEqual(['low', 'typical', 'high']);
  expect(judged.name).toBe('typical');
  expect(judged.technology.converterIn.minimumLoad).toBe(0.1);
});

test('a store of its own numbers is read with its units', () => {
  const { store, largestArray } = read(
    '{ store: { in: { efficiency: 65 %, minimumLoad: 10 %, standby: 20 W }, standing: 2.4 %/day, out: { efficiency: 0.5 } }, largestArray: 4 }',
  );
  expect(largestArray).toBe(4);
  const { tried, judged } = technologiesOf(store);
  expect(tried).toEqual([judged]);
  expect(judged.technology).toMatchObject({
    kind: 'own',
    converterIn: { efficiency: 0.65, minimumLoad: 0.1, standbyW: 20 },
    converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
  });
  expect(judged.technology.standingLossPerH).toBeCloseTo(0.001, 12);
});

test('hydrogen may have its own keeping, minimum load and standby', () => {
  const { store } = read('{ store: { kind: hydrogen, keeping: unpressed, in: { minimumLoad: 25 %, standby: 30 W } } }');
  const { judged } = technologiesOf(store);
  expect(judged.technology.converterIn).toMatchObject({ minimumLoad: 0.25, standbyW: 30 });
  expect(judged.chain!.compressionKWhPerKg).toBe(0);
});

// Every message names the place, what is wrong and what to write.
test.each([
  ['{ store: hydrogn }', /carry\.store: found "hydrogn", expected one of hydrogen; did you mean "hydrogen"/],
  ['{ store: { in: { efficiency: 65 % } } }', /carry\.store\.out: expected out: { efficiency: 65 % }/],
  [
    '{ store: { in: { efficiency: 650 }, out: { efficiency: 0.5 } } }',
    /carry\.store\.in\.efficiency: 650 is not a fraction/,
  ],
  ['{ store: { kind: hydrogen, in: { efficiency: 0.7 } } }', /hydrogen takes its efficiencies from published ranges/],
  ['{ store: { kind: hydrogen, standing: 1 %/day } }', /carry\.store\.standing: hydrogen is counted as tightly kept/],
  ['{ stor: hydrogen }', /unknown key "stor"; did you mean "store"\?/],
])('%s is refused with the place in the file', (carry, message) => {
  expect(() => read(carry)).toThrow(SiteError);
  expect(() => read(carry)).toThrow(message);
  expect(() => read(carry)).toThrow(/invented\.yaml:\d+:\d+: /);
});

test('problems of carry and costs are reported together', () => {
  const site = inventedSite('\ncarry: { largestArray: 1000 }\ncosts: { years: 0 }\n');
  expect(() => readCarryQuestion(site)).toThrow(/carry\.largestArray: found 1000.*\n.*costs\.years: found 0/);
});
