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

test.each([
  [
    '{ store: { in: { efficiency: 65 % }, out: { efficiency: 50 % }, keeping: unpressed } }',
    /only hydrogen has a keeping/,
  ],
  ['{ store: { out: { efficiency: 50 % } } }', /carry\.store\.in: expected in: { efficiency: 65 % }/],
  ['{ store: { in: { efficiency: 65 %, minimumLoad: 101 % }, out: { efficiency: 50 % } } }', /in\.minimumLoad/],
  ['{ store: { in: { efficiency: 65 %, standby: -1 W }, out: { efficiency: 50 % } } }', /in\.standby/],
  ['{ store: { in: { efficiency: 65 % }, out: { efficiency: 0.5 % } } }', /an efficiency from 1 % to 100 %/],
  ['{ largestArray: 0.5 }', /carry\.largestArray/],
])('%s is told with its place', (carry, message) => {
  expect(() => read(carry)).toThrow(message);
});

test('what is not said of a store is usual: sixteen arrays, no standby, and a tenth as the least an electrolyser runs at', () => {
  const hydrogen = read('{ store: { kind: hydrogen, out: { minimumLoad: 5 %, standby: 3 W } } }');
  expect(hydrogen).toEqual({
    largestArray: 16,
    store: {
      ...{ kind: 'hydrogen', keeping: '200 bar' },
      ...{ in: { minimumLoad: 0.1, standbyW: 0 }, out: { minimumLoad: 0.05, standbyW: 3 } },
    },
  });
  const own = read('{ store: { in: { efficiency: 65 % }, out: { efficiency: 100 % } } }');
  expect(own.store).toMatchObject({
    technology: {
      converterIn: { efficiency: 0.65, minimumLoad: 0, standbyW: 0 },
      converterOut: { efficiency: 1, minimumLoad: 0, standbyW: 0 },
      standingLossPerH: 0,
    },
  });
  expect(technologiesOf(own.store)).toMatchObject({ judged: { name: 'own', chain: null } });
});

// At 200 bar the worst chain takes 63 kWh a kilogram and gives back 40 %, the best 52 and 55 %.
test('the hydrogen tried goes from the worst to the best of its range, with what its plant stands by at', () => {
  const { tried } = technologiesOf(read('{ store: { kind: hydrogen, in: { standby: 30 W } } }').store);
  expect(tried.map(({ technology }) => technology.converterOut.efficiency)).toEqual([0.4, 0.475, 0.55]);
  expect(tried.map(({ chain }) => chain!.electrolysisKWhPerKg + chain!.compressionKWhPerKg)).toEqual([63, 57.5, 52]);
  expect(tried.every(({ technology }) => technology.converterIn.standbyW === 30)).toBe(true);
});

test('problems of one of the two sections alone are reported, and a file without any is read', () => {
  expect(() => readCarryQuestion(inventedSite('\ncosts: { years: 0 }\n'))).toThrow(/costs\.years/);
  expect(() => readCarryQuestion(inventedSite('\ncarry: { largestArray: 1000 }\n'))).toThrow(/carry\.largestArray/);
  expect(readCarryQuestion(inventedSite())).toMatchObject({ settings: { largestArray: 16 }, costs: null });
  const broken = new Proxy(inventedSite(), {
    get: () => {
      throw new TypeError('no such file');
    },
  });
  expect(() => readCarryQuestion(broken)).toThrow(TypeError);
});
