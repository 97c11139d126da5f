import { expect, test } from 'vitest';
import { dailyMeanDemand } from './daily-mean-demand.js';

test('a demand is spread over its own day, and over what there is of the last', () => {
  const demandWh = new Float64Array(60);
  demandWh[3] = 240;
  demandWh[30] = 48;
  demandWh[59] = 24;
  const smooth = dailyMeanDemand(demandWh);
  expect(Array.from(smooth)).toEqual([...new Array(24).fill(10), ...new Array(24).fill(2), ...new Array(12).fill(2)]);
  expect(() => dailyMeanDemand([])).toThrow('above 0');
});
