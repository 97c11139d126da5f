import { expect, test } from 'vitest';
import { finalCellV, fullCellV, sealedFullCell, ventedFullCell } from './full-cell.js';

// Two currents in the ratio of 1 to 4 for 0.17 V, and of 1 to 8 for 0.13 V: the points of the table of EN 50272-2.
test('the float and boost currents of the table are drawn at its voltages, and between them the line is logarithmic', () => {
  expect(fullCellV(0.001, 25, ventedFullCell)).toBeCloseTo(2.23, 12);
  expect(fullCellV(0.004, 25, ventedFullCell)).toBeCloseTo(2.4, 12);
  expect(fullCellV(0.002, 25, ventedFullCell)).toBeCloseTo(2.315, 12);
  expect(fullCellV(0.001, 25, sealedFullCell)).toBeCloseTo(2.27, 12);
  expect(fullCellV(0.008, 25, sealedFullCell)).toBeCloseTo(2.4, 9);
  expect(fullCellV(0.004, 25, sealedFullCell)).toBeCloseTo(2.27 + (0.13 * 2) / 3, 12);
});

// Doubling for 10 K: at 35 degC twice the current is drawn at the same voltage, at 15 degC half of it.
test('warmth doubles the current of a full cell within 10 K', () => {
  expect(fullCellV(0.002, 35, ventedFullCell)).toBeCloseTo(2.23, 12);
  expect(fullCellV(0.0005, 15, ventedFullCell)).toBeCloseTo(2.23, 12);
});

// (2.45 + 2.011 ln 1.1) = 2.64167 V at C/10. The line leaves the straight one 0.16 V below, at 2.48167 V.
test('from the bend on it goes straight to the final voltage of the ten-hour rate', () => {
  expect(finalCellV(0.1, 25)).toBeCloseTo(2.64167, 5);
  expect(finalCellV(0.1, 35)).toBeCloseTo(0.98 * 2.64167, 5);
  expect(fullCellV(0.1, 25, ventedFullCell)).toBeCloseTo(2.64167, 5);
  expect(fullCellV(0.5, 25, ventedFullCell)).toBeCloseTo(2.45 + 2.011 * Math.log(1.5), 12);
  // At 0.12263 V an e-fold the straight line reaches 2.48167 V at 7.78 mA/Ah; half way to 100 mA/Ah is 27.9 mA/Ah.
  const bendRate = 0.001 * Math.exp((2.48167 - 2.23) / 0.12263);
  expect(bendRate).toBeCloseTo(0.00778, 4);
  expect(fullCellV(bendRate, 25, ventedFullCell)).toBeCloseTo(2.48167, 4);
  expect(fullCellV(Math.sqrt(bendRate * 0.1), 25, ventedFullCell)).toBeCloseTo(2.48167 + 0.08, 4);
});
