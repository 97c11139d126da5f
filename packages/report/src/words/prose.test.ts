import { expect, test } from 'vitest';
import { prose } from './prose.js';

test('lines broken for a terminal become one, and figures stay with their units', () => {
  expect(prose('the generator runs 57 h in 16 starts and\nburns 80.8 L, from 10 December')).toBe(
    'the generator runs 57\u00a0h in 16\u00a0starts and burns 80.8\u00a0L, from 10\u00a0December',
  );
});

test('thousands stay together', () => {
  expect(prose('12 345 678 kWh in 2025 hours')).toBe('12\u00a0345\u00a0678\u00a0kWh in 2025\u00a0hours');
});

test('other words after a figure may begin a line', () => {
  expect(prose('in 2 habits, 3 Lakes')).toBe('in 2 habits, 3 Lakes');
});
