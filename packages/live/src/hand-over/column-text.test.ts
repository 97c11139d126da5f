import { expect, test } from 'vitest';
import { buffersOf, columnText, valueOfText } from './column-text.js';

test('typed arrays come back as they were, to the last bit, and plain values beside them', () => {
  const value = {
    name: 'a "place" </script>',
    years: [{ airC: Float64Array.of(0.1 + 0.2, -40, 1e-9), mended: Uint8Array.of(0, 2), none: null }],
    list: [{ f64: 'no column' }, { i32: [1], more: 2 }],
    lines: Int32Array.of(7),
  };
  expect(valueOfText(columnText(value))).toEqual(value);
});

test('every buffer is found, each once', () => {
  const shared = new Float64Array(3);
  const buffers = buffersOf({ a: [shared, { b: shared }], c: new Uint8Array(2), d: 'text' });
  expect([...buffers].map(({ byteLength }) => byteLength)).toEqual([24, 2]);
});
