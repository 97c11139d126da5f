import { beforeEach, expect, test } from 'vitest';
import { type ArrayChain, arrayChain, extendChain } from './array-chain.js';
import { windCellC } from './cell-temperature.js';
import type { Controller } from './controller.js';
import { controllerLosses, controllerYear } from './controller-year.js';
import { dcYear } from './dc-year.js';
import { solveModule } from './solve-module.js';

// Invented sheet and an invented year: a clear-sky bell by day and season, dimmer on every third day.
const parameters = solveModule({
  ...{ powerW: 300, vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, vocPerK: -0.0031, iscPerK: 0.0005 },
});
const planeWm2 = new Float64Array(8760);
const skylineLossWm2 = new Float64Array(8760);
const glassLossWm2 = new Float64Array(8760);
const effectiveWm2 = new Float64Array(8760);
const cellC = new Float64Array(8760);
const snowShare = new Float64Array(8760);
for (let h = 0; h < 8760; h++) {
  const day = Math.floor(h / 24);
  const bell = Math.cos(((h % 24) - 11.5) / 3.5) * (Math.abs((h % 24) - 11.5) < 5.4 ? 1 : 0);
  planeWm2[h] = 900 * Math.max(0, bell) * (day % 3 === 0 ? 0.3 : 1);
  skylineLossWm2[h] = h % 24 < 9 ? 0.4 * planeWm2[h]! : 0;
  glassLossWm2[h] = 0.03 * (planeWm2[h]! - skylineLossWm2[h]!);
  effectiveWm2[h] = planeWm2[h]! - skylineLossWm2[h]! - glassLossWm2[h]!;
  cellC[h] = windCellC(5 - 20 * Math.cos(((day - 20) * 2 * Math.PI) / 365), planeWm2[h]!, 2);
  snowShare[h] = day < 40 && day % 7 < 2 ? 0.8 : 0;
}
const soiling = [0, 0, 0.01, 0.02, 0.02, 0.03, 0.03, 0.03, 0.02, 0.01, 0, 0];
const input = {
  ...{ parameters, inSeries: 2, strings: 3, cableOhm: 0.05, effectiveWm2, cellC, soiling, snowShare },
  ...{ mismatch: 0.02, age: 0.04 },
};
const dc = dcYear(input);
const light = { planeWm2, skylineLossWm2, glassLossWm2 };
let chain: ArrayChain;
// Not while the file loads, so that a chain that cannot be made fails its tests.
beforeEach(() => {
  chain = arrayChain(input, dc, light);
});
const sum = (series: Float64Array) => series.reduce((total, value) => total + value, 0);
const monthsOf = (name: string) => chain.losses.find((loss) => loss.name === name)!.kWh;
const yearOf = (name: string) => sum(monthsOf(name));

test('the chain starts with rated power times plane insolation and ends with the controller terminals', () => {
  expect(chain.ratedKW).toBeCloseTo(1.8, 12);
  expect(sum(chain.startKWh)).toBeCloseTo((1.8 * sum(planeWm2)) / 1000, 6);
  expect(sum(chain.restKWh)).toBeCloseTo(sum(dc.powerW) / 1000, 6);
});

test('through a controller to the bus it closes to rounding in every month', () => {
  const controller: Controller = {
    ...{ kind: 'maximum-power', maxVoltageV: 150, maxCurrentA: 50, efficiency: 0.96, nightDrawW: 1 },
  };
  const bankV = Float64Array.from({ length: 8760 }, (_, h) => 26 + 2 * Math.sin(h / 9));
  const losses = controllerLosses(controllerYear(input, controller, 20, 32, dc), bankV);
  const clippedWh = losses.busW.map((power, h) => power - Math.min(power, 50 * bankV[h]!));
  let whole = extendChain(chain, 'held away', losses.heldAwayW);
  whole = extendChain(whole, 'conversion', losses.conversionW);
  whole = extendChain(whole, 'clipping', clippedWh);
  expect(sum(clippedWh)).toBeGreaterThan(0);
  for (let month = 0; month < 12; month++) {
    let rest = whole.startKWh[month]!;
    for (const loss of whole.losses) rest -= loss.kWh[month]!;
    expect(Math.abs(rest - whole.restKWh[month]!)).toBeLessThan(1e-9 * whole.startKWh[month]!);
  }
  expect(sum(whole.restKWh)).toBeCloseTo((sum(losses.busW) - sum(clippedWh)) / 1000, 6);
});

// Each by a sum of its own, so that no loss can hide in its neighbour.
test('each loss is the one its name says', () => {
  expect(yearOf('skyline')).toBeCloseTo((1.8 * sum(skylineLossWm2)) / 1000, 6);
  expect(yearOf('glass')).toBeCloseTo((1.8 * sum(glassLossWm2)) / 1000, 6);
  const soiledAway = monthsOf('soiling');
  expect([0, 1, 10, 11].map((month) => soiledAway[month])).toEqual([0, 0, 0, 0]);
  const snow = monthsOf('snow');
  expect(snow[0]).toBeGreaterThan(0);
  expect(sum(snow.slice(2))).toBe(0);
  const beforeMismatch = sum(chain.restKWh) + yearOf('cable') + yearOf('age') + yearOf('mismatch');
  expect(yearOf('mismatch') / beforeMismatch).toBeCloseTo(0.02, 9);
  expect(yearOf('age') / (beforeMismatch * 0.98)).toBeCloseTo(0.04, 9);
  expect(yearOf('cable')).toBeCloseTo(sum(dc.cableLossW) / 1000, 0);
});

test('temperature is a gain in a cold January and a loss in July', () => {
  const temperature = monthsOf('temperature');
  expect(temperature[0]).toBeLessThan(0);
  expect(temperature[6]).toBeGreaterThan(0);
});

test('irradiances that do not add up are refused with the hour', () => {
  const wrong = { planeWm2, skylineLossWm2, glassLossWm2: new Float64Array(8760) };
  expect(() => arrayChain(input, dc, wrong)).toThrow(/plane - skyline - glass must give effectiveWm2.*hour 7/);
  expect(() => extendChain(chain, 'throttled', new Float64Array(3))).toThrow(/throttled must have 8760 hours, got 3/);
});

test('series that are not a whole year are refused', () => {
  const short = new Float64Array(24);
  for (const wrong of [{ planeWm2: short }, { skylineLossWm2: short }, { glassLossWm2: short }]) {
    expect(() => arrayChain(input, dc, { ...light, ...wrong })).toThrow('the chain needs 8760 hours, got 24');
  }
  expect(() => arrayChain({ ...input, effectiveWm2: short }, dc, light)).toThrow('got 24');
});

test('irradiances add up but for rounding, a millionth of the light', () => {
  // Hour 12 of day 1 has 885 W/m2 in view of the sky.
  const off = (byWm2: number) => {
    const other = effectiveWm2.slice();
    other[36] = other[36]! + byWm2;
    return () => arrayChain({ ...input, effectiveWm2: other }, dc, light);
  };
  expect(planeWm2[36]).toBeGreaterThan(800);
  for (const byWm2 of [5e-4, -5e-4]) expect(off(byWm2)).not.toThrow();
  for (const byWm2 of [2e-3, -2e-3]) expect(off(byWm2)).toThrow(/hour 36/);
});
