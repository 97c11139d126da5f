import { busPowerW, controllerYear, solveModule } from '@wintergap/array';
import type { Bank } from '@wintergap/battery';
import { compileGenerator, type GeneratorSettings } from '@wintergap/generator';
import { expect, test } from 'vitest';
import { createBusFlow, createMoment, type Moment, solveBus } from './bus-flow.js';
import { idealBank, type PlantParts, petrolSet, plantOf } from './plant.fixture.js';
import type { Plant } from './plant.js';

// Both buses worked by hand with a bank of 24 V that loses nothing and holds 2400 Wh, 100 Ah.
const bank = (over: Partial<Bank> = {}): Bank => ({ ...idealBank(2400), ...over });
const solve = (parts: PlantParts, moment: Partial<Moment> = {}, plant: Partial<Plant> = {}) => {
  const flow = createBusFlow(24);
  solveBus(
    flow,
    { ...plantOf({ bank: bank(), ...parts }), ...plant },
    { ...createMoment(), stateOfCharge: 0.5, ...moment },
  );
  return flow;
};
const airC = new Float64Array(8760).fill(10);
const acSet: GeneratorSettings = {
  ...petrolSet,
  output: { bus: 'ac', powerW: 2000, charger: { powerW: 960, efficiency: 0.8 } },
};

test('what the sun has beyond the load goes into the bank', () => {
  const flow = solve({ sunW: () => 500, dcW: () => 260 });
  expect(flow).toMatchObject({ sunW: 500, demandW: 260, chargeW: 240, amps: 10, thrownW: 0, dischargeW: 0 });
  expect(flow).toMatchObject({ voltageV: 24, storedShare: 1, servedShare: 1, atVoltageLimit: false });
  expect(flow.ratePerH).toBeCloseTo(0.1, 12);
});

test('a full bank, or one at 50 degC, takes nothing: the rest is thrown away', () => {
  for (const moment of [{ stateOfCharge: 1 }, { bankC: 50 }]) {
    const flow = solve({ sunW: () => 500, dcW: () => 260 }, moment);
    expect(flow).toMatchObject({ chargeW: 0, amps: 0, thrownW: 240, ratePerH: 0, atVoltageLimit: false, voltageV: 24 });
  }
  expect(solve({ sunW: () => 500, dcW: () => 260 }, { bankC: 49.9 }).chargeW).toBe(240);
});

test('a bank takes no more than its acceptance, and is then held at its voltage', () => {
  const held = solve({ sunW: () => 500, dcW: () => 260, bank: bank({ acceptanceAmps: () => 5 }) });
  expect(held).toMatchObject({ chargeW: 120, amps: 5, thrownW: 120, atVoltageLimit: true });
  const exactly = solve({ sunW: () => 500, dcW: () => 260, bank: bank({ acceptanceAmps: () => 10 }) });
  expect(exactly).toMatchObject({ chargeW: 240, amps: 10, thrownW: 0, atVoltageLimit: true });
  // Held by the current it may have, it is charged at the voltage that it has: 5 A at 23 V.
  const cold = bank({ acceptanceAmps: () => 5, chargeLimitAmps: () => 5, terminalVoltage: () => 23 });
  expect(solve({ sunW: () => 500, dcW: () => 260, bank: cold })).toMatchObject({
    chargeW: 115,
    amps: 5,
    thrownW: 125,
    atVoltageLimit: false,
  });
});

test('part of the charge may make gas', () => {
  const flow = solve({ sunW: () => 500, dcW: () => 260, bank: bank({ chargeEfficiency: () => 0.75 }) });
  expect(flow).toMatchObject({ amps: 10, storedShare: 0.75 });
  expect(flow.ratePerH).toBeCloseTo(0.075, 12);
});

test('what the load has beyond the sun comes out of the bank, up to its limits', () => {
  const flow = solve({ sunW: () => 100, dcW: () => 340 });
  expect(flow).toMatchObject({ dischargeW: 240, amps: -10, servedShare: 1, chargeW: 0, thrownW: 0, storedShare: 1 });
  expect(flow.atVoltageLimit).toBe(false);
  expect(flow.ratePerH).toBeCloseTo(-0.1, 12);
  // 5 A of 24 V: 120 W and the sun's 100 W of 340 W.
  const limited = solve({ sunW: () => 100, dcW: () => 340, bank: bank({ dischargeLimitAmps: () => 5 }) });
  expect(limited).toMatchObject({ dischargeW: 120, amps: -5 });
  expect(limited.servedShare).toBeCloseTo(220 / 340, 12);
});

test('a bank at the mark that cold and current leave gives nothing more', () => {
  const atMark = bank({ floorState: () => 0.5, restVoltage: () => 23 });
  const flow = solve({ sunW: () => 85, dcW: () => 340, bank: atMark });
  expect(flow).toMatchObject({ dischargeW: 0, amps: -0, emptyAt: 0.5, voltageV: 23, servedShare: 0.25 });
  expect(solve({ sunW: () => 85, dcW: () => 340, bank: bank({ floorState: () => 0.49 }) }).dischargeW).toBe(255);
});

test('a DC engine fills the load and the bank up to its rating, and only what is asked', () => {
  const generator = petrolSet;
  const all = solve({ sunW: () => 100, dcW: () => 340, generator }, { engineLoaded: true });
  expect(all).toMatchObject({ engineLimitW: 3000, engineToDcW: 3000, chargeW: 2760, thrownW: 0, engineToAcW: 0 });
  const asked = bank({ acceptanceAmps: () => 10 });
  const satisfied = solve({ sunW: () => 100, dcW: () => 340, generator, bank: asked }, { engineLoaded: true });
  expect(satisfied).toMatchObject({
    engineWantW: 480,
    engineToDcW: 480,
    chargeW: 240,
    atVoltageLimit: true,
    thrownW: 0,
  });
  // More sun than load and bank take: the engine gives nothing to the bus.
  const bright = solve({ sunW: () => 900, dcW: () => 340, generator, bank: asked }, { engineLoaded: true });
  expect(bright).toMatchObject({ engineToDcW: 0, chargeW: 240, thrownW: 320 });
  expect(solve({ dcW: () => 340, generator }, { engineLoaded: false })).toMatchObject({
    engineLimitW: 0,
    dischargeW: 340,
  });
});

test('an AC engine carries the AC load first; its charger has what is left of the rating, or its own', () => {
  const generator = acSet;
  // 2000 W rated, 500 of them AC load: the charger may draw 1500 and give 1200, but gives 960.
  const flow = solve({ acW: () => 500, generator }, { engineLoaded: true });
  expect(flow).toMatchObject({ engineToAcW: 500, acByInverterW: 0, inverterW: 0, engineLimitW: 960, engineToDcW: 960 });
  // 1500 W of AC load leave 500 W, 400 behind the charger.
  expect(solve({ acW: () => 1500, generator }, { engineLoaded: true }).engineLimitW).toBeCloseTo(400, 9);
  // The inverter carries what the set does not: 2600 - 2000.
  const beyond = solve({ acW: () => 2600, generator, inverterIdleW: 20 }, { engineLoaded: true });
  expect(beyond).toMatchObject({ engineToAcW: 2000, acByInverterW: 600, engineLimitW: 0 });
  expect(beyond.inverterW).toBeGreaterThan(600);
  expect(beyond.demandW).toBe(beyond.inverterW);
  // Without the engine it carries all, and idles beside it.
  expect(solve({ acW: () => 500, generator, inverterIdleW: 20 })).toMatchObject({ acByInverterW: 500, inverterW: 520 });
});

test('an inverter carries no more than its limit, and none is none', () => {
  expect(solve({ acW: () => 500 }, {}, { inverterLimitW: 300 }).acByInverterW).toBe(300);
  const generator = compileGenerator(acSet, { elevationM: 0, airC });
  const beyond = solve({ acW: () => 2600 }, { engineLoaded: true }, { generator, inverterLimitW: 300 });
  expect(beyond.acByInverterW).toBe(300);
  const none = solve({ acW: () => 2600 }, { engineLoaded: true }, { generator, inverter: null, inverterLimitW: 0 });
  expect(none).toMatchObject({ acByInverterW: 0, inverterW: 0, engineToAcW: 2000 });
});

test('everything on the DC bus is asked for: inverter, converter, own use and heater', () => {
  const plant = { converterInputW: new Float64Array(8760).fill(110), ownUseW: new Float64Array(8760).fill(7) };
  const flow = solve({ acW: () => 500, dcW: () => 100, inverterIdleW: 20 }, { heaterW: 30 }, plant);
  expect(flow.demandW).toBe(520 + 110 + 7 + 30);
});

test('above a current limit counts as clipped what the buses would have taken, as spare what not', () => {
  // 10 A at 24 V let 240 W of 500 pass.
  const hungry = solve({ sunW: () => 500, dcW: () => 100, maxCurrentA: 10 });
  expect(hungry).toMatchObject({ sunW: 240, clippedW: 260, spareW: 0 });
  const full = solve({ sunW: () => 500, dcW: () => 100, maxCurrentA: 10 }, { stateOfCharge: 1 });
  expect(full).toMatchObject({ sunW: 240, clippedW: 0, spareW: 260, thrownW: 140 });
  // The bank would take 5 A, 120 W, and the load 200: 80 W more than the 240.
  const some = solve({ sunW: () => 500, dcW: () => 200, maxCurrentA: 10, bank: bank({ acceptanceAmps: () => 5 }) });
  expect(some).toMatchObject({ clippedW: 80, spareW: 180 });
});

test('the stage sets the voltage that acceptance is asked at', () => {
  const staged = bank({
    setVoltage: (stage) => [28, 27, 30][stage]!,
    acceptanceAmps: (_s, _c, stage) => [4, 2, 6][stage]!,
  });
  for (const [stage, chargeW] of [
    [0, 112],
    [1, 54],
    [2, 180],
  ] as const) {
    expect(solve({ sunW: () => 500, bank: staged }, { stage })).toMatchObject({ chargeW, thrownW: 500 - chargeW });
  }
});

// A direct connection gives what the module's curve has at the voltage of the bank, which charging raises from 24 to 26 V.
test('a direct connection is solved again at the voltage that its own current makes', () => {
  const sheet = { vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, vocPerK: -0.0031, iscPerK: 0.0005 };
  const lit = { effectiveWm2: Float64Array.of(800), cellC: Float64Array.of(20) };
  const wired = { parameters: solveModule(sheet), inSeries: 1, strings: 4, cableOhm: 0, ...lit };
  const controller = controllerYear(wired, { kind: 'direct', nightDrawW: 0 }, 20, 32);
  const sources = [{ name: 'array', controller, maxCurrentA: 1e6 }];
  const charging = bank({ chargeAmps: (powerW) => powerW / 26 });
  const flow = solve({ bank: charging }, {}, { sources });
  const [at24, at26] = [24, 26].map((volts) => busPowerW(controller, 0, volts));
  expect(at26! / at24!).toBeGreaterThan(1.05);
  expect(flow.sunW).toBeCloseTo(at26!, 9);
  expect(flow).toMatchObject({ chargeW: flow.sunW, voltageV: 26, thrownW: 0 });
  expect(flow.amps).toBeCloseTo(at26! / 26, 9);
});

test('an AC engine that carries all AC load lets the inverter rest, a DC engine does not', () => {
  const rested = solve({ acW: () => 500, generator: acSet, inverterIdleW: 20 }, { engineLoaded: true });
  expect(rested).toMatchObject({ inverterW: 0, demandW: 0, acByInverterW: 0 });
  const carried = solve({ acW: () => 500, generator: petrolSet, inverterIdleW: 20 }, { engineLoaded: true });
  expect(carried).toMatchObject({ engineToAcW: 0, acByInverterW: 500, inverterW: 520, engineLimitW: 3000 });
});

test('a bank held by its current is charged by the engine at the voltage it has', () => {
  const cold = bank({ acceptanceAmps: () => 5, chargeLimitAmps: () => 5, terminalVoltage: () => 23 });
  const flow = solve({ dcW: () => 100, generator: petrolSet, bank: cold }, { engineLoaded: true });
  expect(flow).toMatchObject({ chargeW: 115, engineToDcW: 215, amps: 5, voltageV: 23, atVoltageLimit: false });
});

test('without current the bus stands at the voltage of a resting bank', () => {
  const full = solve({ sunW: () => 500, bank: bank({ restVoltage: () => 25.4 }) }, { stateOfCharge: 1 });
  expect(full).toMatchObject({ amps: 0, voltageV: 25.4, thrownW: 500 });
});

test('what engine and bank together cannot carry is shed in proportion', () => {
  // 3000 W of the engine and 5 A at the 22 V to which they draw the bank, of 4000 W.
  const weak = bank({ dischargeLimitAmps: () => 5, terminalVoltage: (amps) => (amps < 0 ? 22 : 26) });
  const flow = solve({ dcW: () => 4000, generator: petrolSet, bank: weak }, { engineLoaded: true });
  expect(flow).toMatchObject({ engineToDcW: 3000, dischargeW: 110, amps: -5, voltageV: 22 });
  expect(flow.servedShare).toBeCloseTo(3110 / 4000, 12);
});

test('a current limit counts at the voltage of the moment before', () => {
  const rising = bank({ chargeAmps: (powerW) => powerW / 26 });
  expect(solve({ sunW: () => 500, maxCurrentA: 10, bank: rising })).toMatchObject({ sunW: 240, chargeW: 240 });
});
