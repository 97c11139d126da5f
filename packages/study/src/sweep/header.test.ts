import { expect, test } from 'vitest';
import { headerPositions, headerText, readHeader, type SweepHeader } from './header.js';

const header: SweepHeader = {
  site: 'Otter Bend',
  fingerprint: '0123456789abcdef0123456789abcdef',
  order: { gridSize: 24, sample: { count: 12, seed: 2 } },
  part: { index: 3, of: 3 },
  axes: ['bank.capacity'],
  columns: { cost: true, years: { count: 4, seed: 0 } },
};
const written = JSON.parse(headerText(header)) as Record<string, unknown>;
const read = (changed: object) => readHeader(JSON.stringify({ ...written, ...changed }));

test('a header reads back as it was written, behind a hash or alone', () => {
  expect(readHeader(headerText(header))).toEqual(header);
  expect(readHeader(`# ${headerText(header)}`)).toEqual(header);
  expect(read({ sample: null, years: null })).toMatchObject({ order: { sample: null }, columns: { years: null } });
});

test('a header that cannot be is none', () => {
  for (const wrong of [
    { part: '0/3' },
    { part: '4/3' },
    { part: '3' },
    { sweep: '0123' },
    { grid: 0 },
    { sample: { count: 25, seed: 1 } },
    { sample: { count: 0, seed: 1 } },
    { sample: { count: 5, seed: -1 } },
    { years: { count: 0, seed: 1 } },
    { axes: 'bank.capacity' },
    { axes: [1] },
    { cost: 'yes' },
    { site: 7 },
  ]) {
    expect(read(wrong), JSON.stringify(wrong)).toBeNull();
  }
  expect(read({ part: '1/3' })).not.toBeNull();
  expect(read({ part: '1/1' })).not.toBeNull();
  expect(read({ sample: { count: 24, seed: 0 } })).not.toBeNull();
});

// A third of twelve designs of a sample, the last one: positions 8 to 11.
test('a part holds its share of the designs that are run', () => {
  expect(headerPositions(header)).toEqual({ from: 8, to: 12 });
});
