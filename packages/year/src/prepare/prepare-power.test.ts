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

// Day length N = 2/15 acos(-tan latitude tan declination), Duffie and Beckman (2013), eq. 1.6.11, with Cooper's declination.
test('a controller draws its own power from sunset to sunrise, parts of hours included', () => {
  const path = new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname;
  const { arrays, site } = simulateSite(loadSite(path).base);
  const { ownUseW } = arrays[0]!;
  const rad = Math.PI / 180;
  for (const day of [120, 171, 200, 265]) {
    const declination = 23.45 * Math.sin((360 / 365) * (284 + day + 1) * rad) * rad;
    const dayH = (2 / 15) * (Math.acos(-Math.tan(site.place.latitude * rad) * Math.tan(declination)) / rad);
    const drawnWh = ownUseW.subarray(day * 24, day * 24 + 24).reduce((sum, w) => sum + w, 0);
    // Four points an hour tell sunrise and sunset to an eighth of an hour each.
    expect(Math.abs(drawnWh / site.arrays[0]!.controller.nightDraw - (24 - dayH))).toBeLessThan(0.3);
  }
});
