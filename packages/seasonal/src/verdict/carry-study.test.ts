import { parseSite } from '@wintergap/site';
import { PreparedCache } from '@wintergap/year';
import { expect, test } from 'vitest';
import { inventedSite } from '../site.fixture.js';
import { studyCarry } from './carry-study.js';

const prepared = new PreparedCache();
// Every price is invented.
const costs =
  '\ncosts: { years: 20, array: 600 /kW, bank: 200 /kWh, engine: { price: 1800, life: 2000 h, service: 0.4 /h }, store: { in: 1500 /kW, kept: 20 /kWh, out: 2500 /kW } }\n';

test('a design that sun and bank carry is simulated once, and has nothing to retire', () => {
  const asked: [number, number][] = [];
  const file = inventedSite(
    `${costs}variants: { lean: { loads: [{ name: freezer, remove: true }, { name: lights, remove: true }] } }\n`,
  );
  const study = studyCarry(file, 'lean', (done, atMost) => asked.push([done, atMost]), prepared);
  expect(asked).toEqual([[0, 25]]);
  expect(study).toMatchObject({ demandKWh: 0, closing: null, rivals: [], engineCost: null, yearsSimulated: 1 });
  expect(study.arrays.map(({ scale }) => scale)).toEqual([1]);
  expect(study.judged).toBe(study.arrays[0]);
  expect(study.judged.ratedKW).toBeCloseTo((4 * 32.5 * 9.24) / 1000, 9);
  expect(study.judged.judgement.verdict).toBe('nothing to retire');
  expect(study.judged.year).toMatchObject({ powerW: 0, year: study.asItIs });
  expect(Math.max(...study.judged.year.demandWh)).toBe(0);
  expect(study.surplusKWh).toBeCloseTo(study.asItIs.summary.throttle.kWh, 9);
  expect(study.technologies.map(({ tried }) => tried.name)).toEqual(['low', 'typical', 'high']);
  // Array 1.2 kW and bank 14.4 kWh are bought in either case, the engine in one.
  const first = 1.2012 * 600 + 14.4 * 200;
  expect(study.asItIsCost!.firstCost).toBeCloseTo(first + 1800, 6);
});

const dark = (around: string, engine: string) => {
  const text = `
name: Invented cellar
place: { latitude: 47, longitude: -92, elevation: 400 m, utcOffset: -6 h }
weather:
  months:
    irradiation: [1.4 kWh/m2, 2.4 kWh/m2, 3.7 kWh/m2, 4.7 kWh/m2, 5.5 kWh/m2, 6 kWh/m2,
                  6 kWh/m2, 5 kWh/m2, 3.6 kWh/m2, 2.3 kWh/m2, 1.3 kWh/m2, 1 kWh/m2]
    air: [5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC, 5 degC]
arrays:
  - name: roof
    module: { power: 300 W, vmp: 32.5 V, imp: 9.24 A, voc: 39.9 V, isc: 9.82 A, cells: 60 }
    inSeries: 2
    strings: 0
    mount: { kind: fixed, tilt: 45, azimuth: 180 }
    controller: { kind: maximum-power, maxVoltage: 150 V, maxCurrent: 60 A }
bank: { chemistry: flooded-lead-acid, voltage: 24 V, capacity: 100 Ah, floor: 40 % }
loads: [{ name: radio, power: 20 W, bus: dc }]
${engine}${around}`;
  return studyCarry(parseSite(text, 'cellar.yaml'), undefined, undefined, prepared);
};

test('without an array all of the load is asked for and no larger array is looked for', () => {
  const study = dark(
    costs,
    'generator: { output: { bus: dc, power: 1 kW }, fuel: { kind: petrol, atFull: 1 L/h, idle: 0.3 L/h, price: 1.6 /L }, start: { below: 45 % }, stop: { above: 80 % } }',
  );
  // 20 W all year are 175.2 kWh, and what the bank loses on top.
  expect(study.demandKWh).toBeGreaterThan(175.2);
  expect(study.demandKWh).toBeLessThan(1.4 * 175.2);
  expect(study).toMatchObject({ surplusKWh: 0, closing: null });
  expect(study.arrays).toHaveLength(1);
  expect(study.judged.judgement.verdict).toBe('not worth it');
  expect(study.withStoreCost).toBeNull();
  expect(study.rivals.map(({ name }) => name)).toEqual(['without radio (175 kWh)']);
  expect(study.rivals[0]!.hoursSaved).toBeGreaterThan(0.5 * study.asItIs.summary.generator.hours);
  const { hours, fuelLitres } = study.asItIs.summary.generator;
  expect(study.engineCost!.yearly).toBeCloseTo(20 * (fuelLitres * 1.6 + hours * 0.4), 4);
  // Every year is counted: as it is, with each converter out tried, and without the radio.
  expect(study.yearsSimulated).toBeGreaterThanOrEqual(3);
});
