import { expect, test } from 'vitest';
import { formatQuantity } from './format-quantity.js';

test('large amounts move to the larger unit', () => {
  expect(formatQuantity(300, 'power', 'metric')).toBe('300 W');
  expect(formatQuantity(4000, 'power', 'metric')).toBe('4 kW');
  expect(formatQuantity(1234.5, 'energy', 'metric')).toBe('1.23 kWh');
  expect(formatQuantity(0, 'energy', 'metric')).toBe('0 Wh');
});

test('US units are those of the trade', () => {
  expect(formatQuantity(5.4864, 'length', 'us')).toBe('18 ft');
  expect(formatQuantity(-40, 'temperature', 'us')).toBe('-40 degF');
  expect(formatQuantity(8.37, 'conductorArea', 'us')).toBe('8 AWG');
  expect(formatQuantity(53.5, 'conductorArea', 'us')).toBe('1/0 AWG');
  expect(formatQuantity(107.2, 'conductorArea', 'us')).toBe('4/0 AWG');
  // Beyond 4/0, and for metric sizes between gauges, the trade counts in thousands of circular mils.
  expect(formatQuantity(126.7, 'conductorArea', 'us')).toBe('250 kcmil');
  expect(formatQuantity(16, 'conductorArea', 'us')).toBe('31.6 kcmil');
  expect(formatQuantity(1, 'pricePerVolume', 'us')).toBe('3.79 /gal');
  expect(formatQuantity(0.527528, 'heatLoss', 'us')).toBe('1 BTU/(h degF)');
});

test('digits before the point are kept and no minus zero is shown', () => {
  expect(formatQuantity(12345, 'length', 'metric', 2)).toBe('12345 m');
  expect(formatQuantity(-1e-30, 'length', 'metric')).toBe('0 m');
});
