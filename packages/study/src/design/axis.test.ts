import { expect, test } from 'vitest';
import { expandRange, outermostFirst } from './axis.js';

test('a range stands for its whole numbers, a step and a unit go with it', () => {
  expect(expandRange('2..5')).toEqual([2, 3, 4, 5]);
  expect(expandRange('2..8/3')).toEqual([2, 5, 8]);
  expect(expandRange('0..7/5')).toEqual([0, 5]);
  expect(expandRange('-10..0/5 degC')).toEqual(['-10 degC', '-5 degC', '0 degC']);
  expect(expandRange('500..1000/250 Ah')).toEqual(['500 Ah', '750 Ah', '1000 Ah']);
});

test('what is no range stands for itself', () => {
  for (const written of ['500 Ah', 'base', 4, true, null, { kind: 'fixed' }, '1..', '1.5', '10-01']) {
    expect(expandRange(written)).toEqual([written]);
  }
});

test('a range that is empty, stands still or never ends is told so', () => {
  expect(() => expandRange('8..2')).toThrow('expected the smaller number first, such as 2..8');
  expect(() => expandRange('2..8/0')).toThrow('expected a step of 1 or more');
  expect(() => expandRange('0..10000')).toThrow('at most 10000 values');
  expect(expandRange('1..10000')).toHaveLength(10_000);
});

test('axes that change mount and array stand outside those that change bank and generator', () => {
  const paths = [
    'generator.stop.above',
    'bank.capacity',
    'arrays.0.strings',
    'loads.0.power',
    'bank.voltage',
    'variant',
    'arrays.0.mount.tilt',
    'weather',
  ];
  expect(outermostFirst(paths.map((path) => ({ path, values: [1] }))).map(({ path }) => path)).toEqual([
    'weather',
    'variant',
    'bank.voltage',
    'arrays.0.strings',
    'arrays.0.mount.tilt',
    'loads.0.power',
    'generator.stop.above',
    'bank.capacity',
  ]);
});

test('a range may hold one value, and blanks around it are none of it', () => {
  expect(expandRange('4..4')).toEqual([4]);
  expect(expandRange(' 2..3 kW ')).toEqual(['2 kW', '3 kW']);
});
