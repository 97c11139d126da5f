import { loadSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { simulateSite } from '../simulate.js';

// Faiman (2008) with the light that comes past the trees; a beam that spruces hold back warms no cell behind them.
test('cells are warmed by the light that reaches them', () => {
  const path = new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname;
  const { arrays, weather } = simulateSite(loadSite(path).base);
  const { plane, input } = arrays[0]!;
  let shaded = 0;
  for (let h = 0; h < 8760; h++) {
    const lossWm2 = plane.skylineLossWm2[h]!;
    if (lossWm2 < 100) continue;
    shaded++;
    const rise = (plane.planeWm2[h]! - lossWm2) / (25 + 6.84 * weather.windMs[h]!);
    expect(input.cellC[h]).toBeCloseTo(weather.airC[h]! + rise, 9);
  }
  expect(shaded).toBeGreaterThan(100);
});
