import { expect, test } from 'vitest';
import { bankAir } from './bank-air.js';
import { exampleSite, exampleYear } from './example.fixture.js';

// EN 50272-2: 0.05 m3/Ah x 12 cells x 20 mA/Ah of the ten-hour capacity; 1000 Ah in twenty hours are some 850 in ten. Air carries
// 0.335 Wh per m3 and K.
test('the air of a vented bank is that of the standard, and the air that is assumed that of its cabinet', () => {
  const { plant } = exampleYear();
  const cabinet = { ...exampleSite.bank.cabinet!, ventilation: 1.005 };
  const air = bankAir({ plant, site: { ...exampleSite, bank: { ...exampleSite.bank, cabinet } } })!;
  expect(air.airM3PerH).toBeGreaterThan(0.05 * 12 * 0.02 * 800);
  expect(air.airM3PerH).toBeLessThan(0.05 * 12 * 0.02 * 900);
  expect(air.neededWPerK / air.airM3PerH).toBeCloseTo(0.335, 3);
  expect(air.assumedM3PerH).toBeCloseTo(3, 9);
  const bare = { ...exampleSite, bank: { ...exampleSite.bank, cabinet: undefined } };
  expect(bankAir({ plant, site: bare })!.assumedM3PerH).toBeNull();
});

test('a lithium bank needs none', () => {
  const bank = { chemistry: 'lithium-iron-phosphate' as const, voltageV: 25.6, capacityAh: 400, atRateH: 5 };
  expect(bankAir(exampleYear({ bank }))).toBeNull();
});
