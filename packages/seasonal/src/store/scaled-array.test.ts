import { PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { ratedKW } from '../cost/bill.js';
import { inventedSite } from '../site.fixture.js';
import { withScaledArray } from './scaled-array.js';

const { base } = inventedSite();
const prepared = new PreparedCache();
const offeredKWh = (scale: number) => simulateSite(withScaledArray(base, scale), prepared).summary.array.availableKWh;

// Doubling the strings of one array behind twice the cable and controller is the same circuit twice.
test('an array scaled by two offers what twice the strings, cable and controller offer', () => {
  const [roof] = base.arrays;
  const { controller } = roof!;
  if (controller.kind !== 'maximum-power') throw new Error('the invented site has a maximum-power controller');
  const doubled = {
    ...base,
    arrays: [
      {
        ...roof!,
        strings: 4,
        cable: { ...roof!.cable!, size: 2 * roof!.cable!.size },
        controller: { ...controller, maxCurrent: 2 * controller.maxCurrent, nightDraw: 2 * controller.nightDraw },
      },
    ],
  };
  const whole = simulateSite(doubled, prepared).summary;
  expect(offeredKWh(2) / whole.array.availableKWh).toBeCloseTo(1, 6);
  expect(ratedKW(withScaledArray(base, 2))).toBeCloseTo(whole.array.ratedKW, 9);
});

test('what an array offers grows in proportion to its scale, part strings included', () => {
  const one = offeredKWh(1);
  // The copper's warmth goes by the ampacity table, which does not grow in proportion to the section: under half a thousandth.
  for (const scale of [0.1, 0.73, 3.3, 16]) expect(Math.abs(offeredKWh(scale) / one / scale - 1)).toBeLessThan(5e-4);
});

test('a scale of nothing or less is refused', () => {
  expect(() => withScaledArray(base, 0)).toThrow('scale must be above 0, got 0');
  expect(() => withScaledArray(base, Number.NaN)).toThrow(RangeError);
});
