import fc from 'fast-check';
import { expect, test } from 'vitest';
import { createFlows, fillFlows } from './hourly-flows.js';

const into = { efficiency: 0.8, powerW: 500, minimumLoad: 0.2, standbyW: 30 };
const out = { efficiency: 0.5, powerW: 200, minimumLoad: 0, standbyW: 10 };

/** The flows of one hour as plain numbers. */
function hour(surplusWh: number, demandWh: number, converterIn = into, converterOut = out) {
  const flows = createFlows(1);
  fillFlows(flows, [surplusWh], [demandWh], converterIn, converterOut);
  return Object.fromEntries(Object.entries(flows).map(([name, values]) => [name, values[0]]));
}

test('surplus is taken within the power of converter in, after the standby of converter out', () => {
  expect(hour(300, 0)).toEqual({
    ...{ offeredWh: 290, supplyWh: 232, standbyWh: 10, standbyFromSurplusWh: 10, needWh: 0, drawWh: 0 },
  });
  expect(hour(900, 0)).toMatchObject({ offeredWh: 500, supplyWh: 400 });
});

// 20 % of 500 W.
test('below its minimum load converter in stands by, which the surplus pays as far as it goes', () => {
  expect(hour(110, 0)).toMatchObject({ offeredWh: 100, standbyWh: 10 });
  expect(hour(109, 0)).toEqual({
    ...{ offeredWh: 0, supplyWh: 0, standbyWh: 40, standbyFromSurplusWh: 40, needWh: 0, drawWh: 0 },
  });
  expect(hour(25, 0)).toEqual({
    ...{ offeredWh: 0, supplyWh: 0, standbyWh: 40, standbyFromSurplusWh: 25, needWh: 15, drawWh: 30 },
  });
  // Without a minimum load it runs on a watt, and stands by on none.
  const eager = { ...into, minimumLoad: 0 };
  expect(hour(11, 0, eager)).toMatchObject({ offeredWh: 1, standbyWh: 10 });
  expect(hour(10, 0, eager)).toMatchObject({ offeredWh: 0, standbyWh: 40, standbyFromSurplusWh: 10, needWh: 30 });
});

test('demand is drawn within the power of converter out, which does not stand by meanwhile', () => {
  expect(hour(0, 150)).toEqual({
    ...{ offeredWh: 0, supplyWh: 0, standbyWh: 30, standbyFromSurplusWh: 0, needWh: 180, drawWh: 360 },
  });
  expect(hour(0, 900)).toMatchObject({ needWh: 930, drawWh: 400 });
  expect(hour(300, 150)).toMatchObject({ offeredWh: 300, standbyWh: 0, needWh: 150 });
});

test('standby is met by surplus or adds to the need, and no surplus is used twice', () => {
  const amounts = fc.integer({ min: 0, max: 800 });
  fc.assert(
    fc.property(amounts, amounts, (surplus, demand) => {
      const flows = hour(surplus, demand);
      expect(flows.needWh! - demand).toBeCloseTo(flows.standbyWh! - flows.standbyFromSurplusWh!, 9);
      expect(flows.offeredWh! + flows.standbyFromSurplusWh!).toBeLessThanOrEqual(surplus);
    }),
  );
});
