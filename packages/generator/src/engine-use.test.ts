import { expect, test } from 'vitest';
import { compileGenerator } from './compile-generator.js';
import { engineUse } from './engine-use.js';
import { fuelFromEfficiency, fuelLine, fuelLPerH } from './fuel-line.js';
import { fuelProperties } from './fuels.js';
import type { GeneratorSettings } from './settings.js';
import { underload, wetRunningCaution } from './underload.js';

const settings: GeneratorSettings = {
  output: { bus: 'ac', powerW: 6000, charger: { powerW: 3000, efficiency: 0.9 } },
  fuel: { kind: 'diesel', atFullLPerH: 2, idleLPerH: 0.5, pricePerL: 1.8 },
  start: [{ kind: 'charge', below: 0.4 }],
  stop: [{ kind: 'bulk-end' }],
  oil: { everyH: 100, cost: 25 },
  overhaul: { everyH: 4000, cost: 3000 },
};

test('hours, starts and litres become cost, upkeep and carbon dioxide', () => {
  const use = engineUse(250, 50, 400, settings);
  expect(use.fuelCost).toBeCloseTo(720, 9);
  expect(use.oilChanges).toBe(2.5);
  expect(use.oilCost).toBe(62.5);
  expect(use.overhauls).toBe(0.0625);
  expect(use.cost).toBeCloseTo(720 + 62.5 + 187.5, 9);
  expect(use.co2Kg).toBeCloseTo((400 * 10.21) / 3.785411784, 6);
  expect(use.fuelKg).toBeCloseTo(334, 9);
  expect(use.meanRunH).toBe(5);
});

test('an engine that never ran cost nothing', () => {
  const { oil: _, overhaul: __, ...bare } = settings;
  expect(engineUse(0, 0, 0, bare)).toMatchObject({ cost: 0, oilChanges: 0, overhauls: 0, meanRunH: null });
  expect(() => engineUse(-1, 0, 0, bare)).toThrow('hours must be 0 or more, got -1');
});

test('a line from efficiencies has these efficiencies', () => {
  const line = fuelLine(fuelFromEfficiency('petrol', 3000, 0.2, 0.12), 3000);
  const { lowerHeatWhPerL } = fuelProperties.petrol;
  expect(3000 / (fuelLPerH(3000, line) * lowerHeatWhPerL)).toBeCloseTo(0.2, 12);
  expect(750 / (fuelLPerH(750, line) * lowerHeatWhPerL)).toBeCloseTo(0.12, 12);
  expect(() => fuelFromEfficiency('petrol', 3000, 0.2, 0.04)).toThrow('quarter power must be 0.05 to 0.2, got 0.04');
});

test('a diesel that idles along is told of, by hours and share; a petrol engine is not', () => {
  const generator = compileGenerator(settings, { elevationM: 0, airC: new Float64Array(8760) });
  expect(generator.minimumLoadW).toBe(1800);
  const outputWh = new Float64Array(8760);
  const engineH = new Float64Array(8760);
  // Half an hour at full power is not light; two hours at 1 kW are.
  [engineH[0], outputWh[0]] = [0.5, 3000];
  [engineH[1], outputWh[1]] = [1, 1000];
  [engineH[2], outputWh[2]] = [1, 1000];
  const use = underload(outputWh, engineH, generator);
  expect(use).toEqual({ hours: 2, share: 0.8 });
  expect(wetRunningCaution(use, 'diesel')).toContain('for 2 h, 80 % of its time');
  expect(wetRunningCaution(use, 'petrol')).toBeNull();
  expect(wetRunningCaution({ hours: 10, share: 0.1 }, 'diesel')).toBeNull();
  expect(underload(outputWh, new Float64Array(8760), generator).share).toBe(0);
});

test('upkeep that is due all the time is refused', () => {
  expect(() => engineUse(1, 1, 1, { ...settings, oil: { everyH: 0, cost: 25 } })).toThrow('oil.everyH');
  expect(() => engineUse(1, 1, 1, { ...settings, overhaul: { everyH: 0, cost: 1 } })).toThrow('overhaul.everyH');
});

test('the minimum load itself is enough, and a fifth of the time below it is borne', () => {
  const generator = compileGenerator(settings, { elevationM: 0, airC: new Float64Array(8760) });
  const hours = (wh: number) =>
    underload(new Float64Array(8760).fill(wh), new Float64Array(8760).fill(1), generator).hours;
  expect(hours(1800)).toBe(0);
  expect(hours(1799)).toBe(8760);
  expect(wetRunningCaution({ hours: 20, share: 0.2 }, 'diesel')).toBeNull();
  expect(wetRunningCaution({ hours: 21, share: 0.21 }, 'diesel')).not.toBeNull();
});
