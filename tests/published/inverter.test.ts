import {
  californianEfficiency,
  europeanEfficiency,
  type Inverter,
  inverterEfficiency,
  inverterLosses,
} from '@wintergap/loads';
import { expect, test } from 'vitest';
import { holds, liesWithin, type Source } from '../validation/hold.js';

// Schmid and von Dobeneck 1988, also used by Macedo and Zilles 2007 (Progress in Photovoltaics 15): loss terms from
// the efficiencies at 10, 50 and 100 % of the rating. From memory; each coefficient recomputed by hand from the
// Lagrange polynomials of p/eta through these three loads.
test('loss terms from three efficiencies agree with the printed closed form', () => {
  for (const [e10, e50, e100] of [
    [0.85, 0.92, 0.88],
    [0.9, 0.935, 0.9],
    [0.7, 0.88, 0.86],
  ] as const) {
    const k0 = (1 / 9) * (1 / e100) - (1 / 4) * (1 / e50) + (5 / 36) * (1 / e10);
    const k1 = (-4 / 3) * (1 / e100) + (33 / 12) * (1 / e50) - (5 / 12) * (1 / e10) - 1;
    const k2 = (20 / 9) * (1 / e100) - (5 / 2) * (1 / e50) + (5 / 18) * (1 / e10);
    const losses = inverterLosses(1000, 0, {
      kind: 'three-points',
      points: [
        { share: 0.1, efficiency: e10 },
        { share: 0.5, efficiency: e50 },
        { share: 1, efficiency: e100 },
      ],
    });
    const printed: Source = { from: 'Schmid and von Dobeneck 1988', sure: 'from memory' };
    const of = `of ${100 * e10}, ${100 * e50}, ${100 * e100} %`;
    holds(printed, `idle loss ${of}, W of 1000`, losses.idleW, 1000 * k0, { within: 1e-9 });
    holds(printed, `proportional loss ${of}`, losses.proportionalLoss, k1, { within: 1e-12 });
    holds(printed, `square loss ${of}`, losses.squareLoss, k2, { within: 1e-12 });
  }
});

// Weights of the European and the Californian efficiency, from memory. The efficiencies are invented; the weighted
// sums were added by hand from the curve at the loads of each list.
test('weighted efficiencies are the printed weights times the curve', () => {
  const inverter: Inverter = {
    powerW: 1000,
    surgeW: 2000,
    ...inverterLosses(1000, 10, { kind: 'peak-and-rated', peak: 0.94, rated: 0.91 }),
  };
  const at = (share: number) => inverterEfficiency(1000 * share, inverter);
  const european = 0.03 * at(0.05) + 0.06 * at(0.1) + 0.13 * at(0.2) + 0.1 * at(0.3) + 0.48 * at(0.5) + 0.2 * at(1);
  const californian =
    0.04 * at(0.1) + 0.05 * at(0.2) + 0.12 * at(0.3) + 0.21 * at(0.5) + 0.53 * at(0.75) + 0.05 * at(1);
  const weights: Source = { from: 'weights of the lists', sure: 'from memory' };
  holds(weights, 'European efficiency of an invented inverter', europeanEfficiency(inverter), european, {
    within: 1e-14,
  });
  holds(weights, 'Californian efficiency of the same', californianEfficiency(inverter), californian, { within: 1e-14 });
  expect(europeanEfficiency(inverter)).toBeLessThan(0.94);
});

// Common practice, no source: a good inverter of 4 kW that idles at 18 W and peaks at 93 % still gives 80 to 90 % at a
// twentieth of its rating, and loses more than half of what it draws at a load as small as its idle draw.
test('an off-grid inverter is good at part load and poor at the load of a night light', () => {
  const inverter: Inverter = {
    powerW: 4000,
    surgeW: 8000,
    ...inverterLosses(4000, 18, { kind: 'peak', efficiency: 0.93 }),
  };
  const trade: Source = { from: 'off-grid inverters of 4 kW, 18 W idle', sure: 'common practice' };
  liesWithin(trade, 'efficiency at a twentieth of the rating', inverterEfficiency(200, inverter), 0.8, 0.9);
  liesWithin(trade, 'efficiency at a load like the idle draw', inverterEfficiency(18, inverter), 0.3, 0.5);
});
