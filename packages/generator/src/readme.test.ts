import { expect, test } from 'vitest';
import { compileGenerator, engineUse, fuelLPerH, type GeneratorSettings } from './index.js';

test('the example of the README gives the results printed there', () => {
  const settings: GeneratorSettings = {
    output: { bus: 'dc', powerW: 3000 },
    fuel: { kind: 'petrol', atFullLPerH: 1.6, idleLPerH: 0.5, pricePerL: 1.55 },
    start: [
      { kind: 'charge', below: 0.45 },
      { kind: 'hand', below: 0.6, looksAt: [8, 18] },
    ],
    stop: [{ kind: 'charge', above: 0.8 }, { kind: 'bulk-end' }],
    accepted: { hours: [[8, 20]] },
    oil: { everyH: 100, cost: 12 },
  };
  const generator = compileGenerator(settings, { elevationM: 430, airC: new Float64Array(8760).fill(-5) });
  expect(generator.ratedW[0]).toBeCloseTo(2902, 10);
  expect(generator.startBelow[8]).toBe(0.6);
  expect(generator.startBelow[9]).toBe(0.45);
  expect(generator.startBelow[21]).toBe(0);
  expect(fuelLPerH(1500, generator)).toBeCloseTo(1.05, 12);
  const { cost, co2Kg } = engineUse(300, 75, 420, settings);
  expect(cost).toBeCloseTo(687, 10);
  expect(co2Kg).toBeCloseTo(974.16, 2);
});
