import { awgAreaMm2, awgDiameterMm, coldVoltageFactor, conductorOhmPerM } from '@wintergap/array';
import { expect, test } from 'vitest';
import { holds, liesWithin, type Source } from '../validation/hold.js';

const gaugeName = (gauge: number) => (gauge > 0 ? String(gauge) : `${1 - gauge}/0`);

// ASTM B258 defines 36 AWG as 0.0050 inch and 4/0 as 0.4600 inch; the printed tables round to 0.1 mil.
test.each([
  [36, 0.005],
  [18, 0.0403],
  [10, 0.1019],
  [0, 0.3249],
  [-3, 0.46],
])('wire gauge %i has the diameter of ASTM B258', (gauge, inches) => {
  const table: Source = { from: 'ASTM B258', sure: 'from memory' };
  holds(table, `diameter of ${gaugeName(gauge)} AWG, inch`, awgDiameterMm(gauge) / 25.4, inches, { within: 0.00006 });
});

// DC resistance of stranded uncoated copper at 75 degC, ohm per 1000 ft, from a common US code table (from memory).
// Printed with three digits; ours is IEC 60028 copper on the exact area with 2 % for the lay of the strands, and
// agrees within 0.6 %: the table's own rounding (0.25 % at 1.98) and that of the 2 %.
test.each([
  [14, 3.14],
  [12, 1.98],
  [10, 1.24],
  [8, 0.778],
  [6, 0.491],
  [4, 0.308],
  [2, 0.194],
  [1, 0.154],
  [0, 0.122],
  [-1, 0.0967],
  [-2, 0.0766],
  [-3, 0.0608],
])('wire gauge %i at 75 degC resists as the code table says', (gauge, ohmPer1000Ft) => {
  const table: Source = { from: 'US code table, stranded copper at 75 degC', sure: 'from memory' };
  const ours = conductorOhmPerM(awgAreaMm2(gauge), 75) * 304.8;
  holds(table, `resistance of ${gaugeName(gauge)} AWG, ohm per 1000 ft`, ours, ohmPer1000Ft, { share: 0.006 });
});

// IEC 60228 class 2 copper at 20 degC, ohm per km (from memory). The table is a ceiling that lets the metal fall short
// of the nominal size, so it lies above the resistance of the full area: by 3 to 6 %, at 50 mm2 by 10 %, never below.
test.each([
  [1.5, 12.1],
  [2.5, 7.41],
  [4, 4.61],
  [6, 3.08],
  [10, 1.83],
  [16, 1.15],
  [25, 0.727],
  [35, 0.524],
  [50, 0.387],
  [70, 0.268],
  [95, 0.193],
  [120, 0.153],
])('%f mm2 at 20 degC stays under the ceiling of IEC 60228, by a tenth at most', (areaMm2, ceilingOhmPerKm) => {
  const ohmPerKm = conductorOhmPerM(areaMm2, 20) * 1000;
  const table: Source = { from: 'IEC 60228 class 2, a ceiling', sure: 'from memory' };
  liesWithin(table, `resistance of ${areaMm2} mm2, ohm/km`, ohmPerKm, 0.9 * ceilingOhmPerKm, 0.98 * ceilingOhmPerKm);
});

// Open-circuit factors for crystalline silicon without a stated coefficient, common US code table (from memory).
test.each([
  [24, 1.02],
  [20, 1.02],
  [19, 1.04],
  [0, 1.1],
  [-1, 1.12],
  [-20, 1.18],
  [-26, 1.21],
  [-40, 1.25],
])('at %i degC silicon without a coefficient is taken as the code table says', (lowC, factor) => {
  const table: Source = { from: 'US code table, crystalline silicon', sure: 'from memory' };
  holds(table, `cold voltage factor at ${lowC} degC`, coldVoltageFactor(lowC), factor, { within: 0 });
});

test('below the table the factor keeps rising', () => {
  expect(coldVoltageFactor(-50)).toBeCloseTo(1.29, 9);
});
