import { radiansPerDegree as rad } from '@wintergap/ground';
import { expect, test } from 'vitest';
import { clearestSkyClearness } from './ceiling.js';

const cos = (deg: number): number => Math.cos(deg * rad);

// Ineichen & Perez (2002), Linke turbidity 3, 1367 W/m2 outside the atmosphere, recomputed apart from this code.
test.each([
  [30, 0, 910.4],
  [60, 0, 487.2],
  [60, 1500, 524.3],
])('the cloudless sky at zenith angle %d deg and %d m gives %d W/m2', (zenithDeg, elevationM, expectedWm2) => {
  expect(1367 * cos(zenithDeg) * clearestSkyClearness(cos(zenithDeg), elevationM, 3)).toBeCloseTo(expectedWm2, 0);
});

test('towards the horizon the clearest sky dims steadily and never exceeds the extraterrestrial', () => {
  for (const elevationM of [0, 430, 2000, 5000]) {
    let above = 1;
    for (let zenithDeg = 0; zenithDeg < 90; zenithDeg += 0.5) {
      const clearness = clearestSkyClearness(cos(zenithDeg), elevationM);
      expect(clearness).toBeGreaterThan(0.02);
      // Between air mass 4 and 6 the enhancement nearly makes up for the longer path; above it the decrease is plain.
      expect(clearness).toBeLessThanOrEqual(above + 1e-3);
      above = clearness;
    }
  }
});
