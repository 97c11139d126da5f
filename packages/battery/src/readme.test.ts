import { expect, test } from 'vitest';
import { autonomyDays, createBank, insulationFrom } from './index.js';

test('the example of the README gives the results printed there', () => {
  const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 20 });
  expect(bank.ampereHoursIn(10)).toBeCloseTo(848.15, 2);
  expect(bank.acceptanceAmps(0.95, 25, 0)).toBeCloseTo(17.48, 2);
  expect(autonomyDays(bank, { averageLoadW: 250, tempC: 0 })).toBeCloseTo(2.018, 3);
  expect(bank.freezingC(0.5)).toBeCloseTo(-24.6, 9);
  expect(insulationFrom({ areaM2: 6, thicknessM: 0.0508 })).toBeCloseTo(3.414, 3);
  expect(insulationFrom({ areaM2: 6, thicknessM: 0.1016 })).toBeCloseTo(1.794, 3);
});
