import type { VariantReasons } from '@wintergap/study';
import { expect, test } from 'vitest';
import { whyText } from './why.js';

test('a variant that differs in dark load alone is not called without difference', () => {
  const energy = { months: [1], arrayOfferedKWh: -20, arrayParts: [], arrayUsedKWh: -20, loadKWh: 0, lostKWh: 0 };
  const none = { generatorHours: 0, fuelLitres: 0, effects: [], restHours: 0, energy };
  const reasons: VariantReasons[] = [{ ...none, variant: 'no mast', darkKWh: 23 }];
  expect(whyText(reasons, 'metric')).toContain('no mast: +23 kWh of dark load. In Jan the array offers 20 kWh less.');
  expect(whyText([{ ...reasons[0]!, darkKWh: 0 }], 'metric')).toContain('no mast: no difference.');
});
