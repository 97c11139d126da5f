import { boostGasMAPerAh, createBank, hydrogenVentilation, ventilationOfBank } from '@wintergap/battery';
import { expect, test } from 'vitest';
import { holds, type Source } from '../validation/hold.js';

// EN 50272-2 / IEC 62485-2: Q = v q s n I_gas C10 / 1000 with v = 24 (96 % air over 4 % hydrogen),
// q = 0.42e-3 m3 of hydrogen per Ah, s = 5; the standard rounds v q s to 0.05. I_gas on boost 20 mA/Ah vented (5 x 4 mA/Ah
// x 1) and 8 mA/Ah valve-regulated (5 x 8 mA/Ah x 0.2). Values from one public copy.
test('air for a charging bank is 0.05 n I C10 / 1000, and openings are 28 cm2 for each m3/h', () => {
  const { airM3PerH, openingCm2 } = hydrogenVentilation(24, 20, 100);
  const standard: Source = { from: 'IEC 62485-2, Q = 0.05 n I C10 / 1000, A = 28 Q', sure: 'looked up' };
  holds(standard, 'air for 24 cells of 100 Ah at 20 mA/Ah, m3/h', airM3PerH, 2.4, { within: 1e-9 });
  holds(standard, 'openings for it, cm2', openingCm2, 67.2, { within: 1e-9 });
  expect(airM3PerH / (((24 * 0.42e-3 * 5 * 24 * 20) / 1000) * 100)).toBeCloseTo(1, 1);
  expect(boostGasMAPerAh.vented).toBe(5 * 4 * 1);
  expect(boostGasMAPerAh.valveRegulated).toBe(5 * 8 * 0.2);
});

// What the cells' own equation says they draw when full and warm at 2.40 V must lie below the standard's safe current.
test('a vented bank is given more air than its gassing in the model asks for, a sealed one less than half of that', () => {
  const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 10 });
  const ampsWhenFull = bank.acceptanceAmps(0.999, 25, 0);
  expect(ampsWhenFull).toBeLessThan((boostGasMAPerAh.vented / 1000) * 1000);
  const vented = ventilationOfBank(bank.settings, 1000)!;
  const standard: Source = { from: 'IEC 62485-2, boost 20 mA/Ah vented', sure: 'looked up' };
  holds(standard, 'air for 12 cells of 1000 Ah, m3/h', vented.airM3PerH, 12, { within: 1e-9 });
  const sealed = createBank({ chemistry: 'agm', voltageV: 24, capacityAh: 1000, atRateH: 10 });
  expect(ventilationOfBank(sealed.settings, 1000)!.airM3PerH / vented.airM3PerH).toBeCloseTo(0.4, 12);
  const lithium = createBank({ chemistry: 'lithium-iron-phosphate', voltageV: 25.6, capacityAh: 300, atRateH: 5 });
  expect(ventilationOfBank(lithium.settings, 300)).toBeNull();
});
