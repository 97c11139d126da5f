import { type Dimension, gaugeAreaMm2, parseQuantity } from '@wintergap/quantity';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// NIST Special Publication 811 (2008), Appendix B.8, factors printed in bold there (exact) or to seven digits.
// Values from memory of the tables; each follows from the exact foot, pound and gallon.
test.each<[string, Dimension, number, number]>([
  ['1 ft', 'length', 0.3048, 1e-15],
  ['1 in', 'length', 0.0254, 1e-15],
  ['1 mi', 'length', 1609.344, 1e-15],
  ['1 lb', 'mass', 0.45359237, 1e-15],
  ['1 gal', 'volume', 3.785411784, 1e-15],
  ['1 imp gal', 'volume', 4.54609, 1e-15],
  ['1 ft3', 'volume', 28.31685, 2e-7],
  ['1 BTU', 'energy', 1055.05585262 / 3600, 1e-15],
  ['1 BTU/h', 'power', 0.2930711, 2e-7],
  ['1 BTU/(h degF)', 'heatLoss', 0.5275279, 2e-7],
  ['1 hp', 'power', 745.6999, 2e-7],
  ['1 mph', 'speed', 0.44704, 1e-15],
  ['1 psi', 'pressure', 6894.757, 2e-7],
  ['1 lb/ft3', 'density', 16.01846, 1e-6],
  ['1 lb/gal', 'density', 119.8264, 1e-6],
])('%s as %s is %d canonical units, by NIST SP 811', (text, dimension, expected, within) => {
  const nist: Source = { from: 'NIST SP 811 (2008), appendix B.8', sure: 'from memory' };
  holds(nist, text, parseQuantity(text, dimension), expected, { share: within });
});

// ASTM B258 as printed in conductor tables (area, mm2), from memory; four digits.
test.each<[string, number]>([
  ['14 AWG', 2.081],
  ['12 AWG', 3.309],
  ['10 AWG', 5.261],
  ['8 AWG', 8.367],
  ['6 AWG', 13.3],
  ['4 AWG', 21.15],
  ['2 AWG', 33.62],
  ['1/0 AWG', 53.49],
  ['2/0 AWG', 67.43],
  ['3/0', 85.01],
  ['4/0 AWG', 107.2],
  ['#36 AWG', 0.012668],
])('%s has %d mm2 of copper, by ASTM B258', (text, mm2) => {
  const astm: Source = { from: 'ASTM B258, conductor tables', sure: 'from memory' };
  holds(astm, `${text}, mm2`, parseQuantity(text, 'conductorArea'), mm2, { share: 6e-4 });
});

// ASTM B258 fixes 4/0 at 0.4600 in and 36 AWG at 0.0050 in; three gauges nearly halve the area.
test('gauge 4/0 is 0.46 inch thick, gauge 36 five thousandths of an inch', () => {
  const diameterIn = (gauge: number) => Math.sqrt((gaugeAreaMm2(gauge) * 4) / Math.PI) / 25.4;
  expect(diameterIn(-3)).toBeCloseTo(0.46, 12);
  expect(diameterIn(36)).toBeCloseTo(0.005, 12);
});
