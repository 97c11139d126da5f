import { expect, test } from 'vitest';
import { withValue } from './change.js';

const strings = ['arrays', { item: 'garden pole' }, 'strings'];

test('a value stands where a variant would write it, and beside what was there', () => {
  const one = withValue({}, strings, 4);
  expect(one).toEqual({ arrays: [{ name: 'garden pole', strings: 4 }] });
  const two = withValue(one, ['bank', 'cabinet', 'insulation', 'foam'], '6 cm');
  const three = withValue(two, ['arrays', { item: 'shed' }, 'height'], '2 m');
  expect(three).toEqual({
    arrays: [
      { name: 'garden pole', strings: 4 },
      { name: 'shed', height: '2 m' },
    ],
    bank: { cabinet: { insulation: { foam: '6 cm' } } },
  });
  expect(one).toEqual({ arrays: [{ name: 'garden pole', strings: 4 }] });
});

test('a value taken back leaves nothing behind', () => {
  const changed = withValue(withValue({}, strings, 4), ['snow', 'clearing'], null);
  expect(withValue(changed, strings, undefined)).toEqual({ snow: { clearing: null } });
  expect(withValue(withValue(changed, strings, undefined), ['snow', 'clearing'], undefined)).toEqual({});
});
