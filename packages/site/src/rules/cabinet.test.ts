import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseSite } from '../load-site.js';

const example = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8');
const written = '{ insulation: { foam: 2 in, area: 3 m2 }, heatCapacity: 250 Wh/K }';

const withCabinet = (cabinet: string) =>
  parseSite(example.replace(written, cabinet).replace(/^ {2}more foam: .*$/m, ''), 'site.yaml');

test.each([
  ['{ insulation: 0.001 W/K }', /insulation: found 0.001 W\/K, expected 0.05 W\/K, what the cables/],
  ['{ insulation: 0.1 W/K }', /insulation: found 0.1 W\/K, but 30 cm of foam all round a bank of 24 kWh still lose/],
  ['{ insulation: { foam: 40 in, area: 3 m2 } }', /foam: found 40 in, expected 0 cm to 30 cm/],
  ['{ insulation: { foam: 2 in, area: 1 m2 } }', /area: found 1 m2, but the cells of 24 kWh alone have a surface of 2/],
  ['{ insulation: 2 W/K, heatCapacity: 5 Wh/K }', /heatCapacity: found 5 Wh\/K, but the cells .* hold 96 Wh\/K/],
  ['{ insulation: 2 W/K, ventilation: 1000 W/K }', /ventilation: found 1000 W\/K, expected 0 W\/K to 500 W\/K/],
])('a cabinet that cannot exist is refused with the reason: %s', (cabinet, reason) => {
  expect(() => withCabinet(cabinet)).toThrow(reason);
});

test.each([
  '{ insulation: 0.5 W/K }',
  '{ insulation: { foam: 12 in, area: 3 m2 } }',
  '{ insulation: 20 W/K, heatCapacity: 110 Wh/K }',
])('a cabinet that can be built is taken: %s', (cabinet) => {
  expect(withCabinet(cabinet).base.bank.cabinet).toBeDefined();
});
