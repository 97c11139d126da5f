import type { Bank } from '@wintergap/battery';
import type { GeneratorSettings } from '@wintergap/generator';
import { createLedger, yearSum } from '@wintergap/tally';
import { describe, expect, test } from 'vitest';
import { createPlantState, runYear } from './balance.js';
import { idealBank, type PlantParts, petrolSet, plantOf } from './plant.fixture.js';
import type { Plant } from './plant.js';

/** The last hours of December, so few that each can be worked out by hand. */
function lastHours(count: number, plant: Plant, stateOfCharge: number) {
  const first = 8760 - count;
  const ledger = createLedger();
  runYear(plant, createPlantState(plant, stateOfCharge), ledger, first);
  const of = (column: Exclude<keyof typeof ledger, 'bankStoredAtStartWh'>, digits = 6) =>
    [...ledger[column].subarray(first)].map((value) => Number(value.toFixed(digits)));
  return { ledger, of };
}

/** What comes hour after hour at the end of the year. */
const atEnd =
  (...hourly: number[]) =>
  (h: number) =>
    hourly[h - 8760 + hourly.length] ?? 0;

/** A lossless bank of 24 V with properties of its own. */
const bankOf = (capacityWh: number, properties: Partial<Bank> = {}): Bank => ({
  ...idealBank(capacityWh),
  ...properties,
});

/** Takes 20 A, 480 W, until it floats, and nothing then. */
const inBulk: Partial<Bank> = { acceptanceAmps: (_, __, stage) => (stage === 0 ? 20 : 0) };

/** 1200 W on the DC bus, from 30 % to 90 %. */
const set: GeneratorSettings = {
  ...petrolSet,
  output: { bus: 'dc', powerW: 1200 },
  start: [{ kind: 'charge', below: 0.3 }],
  stop: [{ kind: 'charge', above: 0.9 }],
};

describe('a bank that loses nothing', () => {
  test('what it holds rises and falls by the hour, and its lowest charge is where the hour or the day began', () => {
    const plant = plantOf({ bank: idealBank(1000), sunW: atEnd(100, 0, 250), dcW: () => 50 });
    const { ledger, of } = lastHours(3, plant, 0.5);
    expect(ledger.bankStoredAtStartWh).toBe(500);
    expect(of('stateOfCharge')).toEqual([0.55, 0.5, 0.7]);
    expect(of('bankStoredWh')).toEqual([550, 500, 700]);
    expect(of('lowestStateOfCharge')).toEqual([0.5, 0.5, 0.5]);
    expect(of('dcServedWh')).toEqual([50, 50, 50]);
  });

  // 100 Wh carry 400 W for a quarter of an hour.
  test('it carries the load until it is empty, and not a moment longer', () => {
    const { of } = lastHours(1, plantOf({ bank: idealBank(10_000), dcW: () => 400 }), 0.01);
    expect(of('dcServedWh')).toEqual([100]);
    expect(of('darkH')).toEqual([0.75]);
    expect(of('stateOfCharge')).toEqual([0]);
  });

  test('it carries the load down to its floor', () => {
    const bank = bankOf(10_000, { floorState: () => 0.2 });
    const { of } = lastHours(1, plantOf({ bank, dcW: () => 400 }), 0.21);
    expect(of('dcServedWh')).toEqual([100]);
    expect(of('lowestStateOfCharge')).toEqual([0.2]);
  });

  test('it never holds less than nothing, however fast it empties', () => {
    const { of } = lastHours(1, plantOf({ bank: idealBank(1), dcW: () => 10_000 }), 0.001);
    expect([of('stateOfCharge'), of('lowestStateOfCharge')]).toEqual([[0], [0]]);
  });

  test('its chargers count days without a full charge from midnight to midnight', () => {
    const { of } = lastHours(26, plantOf({ bank: idealBank(1000), dcW: () => 1 }), 0.5);
    expect(of('daysSinceFull')).toEqual([0, 0, ...new Array(24).fill(1)]);
  });
});

describe('self-discharge', () => {
  test('is a share of what the bank holds at the end of the hour', () => {
    const bank = bankOf(1000, { selfDischargePerHour: () => 0.1 });
    const { of } = lastHours(2, plantOf({ bank }), 0.8);
    expect(of('selfDischargeWh')).toEqual([80, 72]);
    expect(of('stateOfCharge')).toEqual([0.72, 0.648]);
    expect(of('lowestStateOfCharge')).toEqual([0.72, 0.648]);
  });

  // Its rule of doubling is not trusted beyond where chargers stop.
  test.each([
    [40, 0.04],
    [60, 0.05],
  ])('at %d degC is that of no more than 50 degC', (airC, share) => {
    const bank = bankOf(1000, { selfDischargePerHour: (bankC) => bankC / 1000 });
    expect(lastHours(1, plantOf({ bank, airC: () => airC }), 1).of('stateOfCharge')).toEqual([1 - share]);
  });

  test('of a bank drawn below what its label says is nothing', () => {
    const bank = bankOf(1000, { selfDischargePerHour: () => 0.1, lowestState: -0.5 });
    const { of } = lastHours(1, plantOf({ bank }), -0.2);
    expect([of('stateOfCharge'), of('selfDischargeWh')]).toEqual([[-0.2], [0]]);
  });
});

describe('a cabinet of 1 W/K that warms at once, in air of -20 degC with a heater that keeps 5 degC', () => {
  const inCold = (parts: PlantParts, powerW: number): Plant => ({
    ...plantOf({ airC: () => -20, ...parts }),
    cabinet: { insulationWPerK: 1, heatCapacityWhPerK: 1e-3 },
    heater: { powerW, keepAboveC: 5 },
  });

  // Every hour a hundredth of 1000 Wh is lost; from the second hour on the sun puts these 10 Wh back, with twice of it, and of the
  // other half 5 Wh leave as gas. That is 10 W of heat, then 15 W, and the heater knows that of the hour before.
  test('the heater gives what the losses of the bank lack of 25 W, and gas carries its share away', () => {
    const bank = bankOf(1000, {
      selfDischargePerHour: () => 0.01,
      chargeEfficiency: () => 0.5,
      gasEnergyWh: (ampereHours) => 12 * ampereHours,
    });
    const { of } = lastHours(4, inCold({ bank, sunW: () => 1000 }, 60), 1);
    expect(of('bankLossWh', 2)).toEqual([0, 10, 10, 10]);
    expect(of('ownUseWh', 2)).toEqual([25, 15, 10, 10]);
    expect(of('bankC', 2)).toEqual([15, 10, 5, 5]);
  });

  test('a heater warms with what it is fed: with half of its power, or for a quarter of the hour', () => {
    const half = lastHours(1, inCold({ bank: idealBank(1000), sunW: () => 10 }, 20), 0);
    expect([half.of('ownUseWh'), half.of('bankC')]).toEqual([[10], [-10]]);
    const quarter = lastHours(1, inCold({ bank: idealBank(1000) }, 20), 0.005);
    expect([quarter.of('ownUseWh'), quarter.of('bankC')]).toEqual([[5], [-15]]);
  });
});

describe('an engine', () => {
  // 300 W take 20 % of 1000 Wh in 40 minutes; then 900 W go into the bank, 300 Wh in the rest of this hour and 300 Wh in the first
  // 20 minutes of the next, which bring it to 90 %. Petrol: 1.6 L/h.
  test('starts and stops in the moment at which the bank reaches its charge, and burns for as long as it runs', () => {
    const plant = plantOf({ bank: idealBank(1000), dcW: () => 300, generator: set });
    const { of } = lastHours(3, plant, 0.5);
    expect(of('stateOfCharge')).toEqual([0.6, 0.7, 0.4]);
    expect(of('lowestStateOfCharge')).toEqual([0.3, 0.6, 0.4]);
    expect(of('starts')).toEqual([1, 0, 0]);
    expect(of('generatorH')).toEqual([0.333333, 0.333333, 0]);
    expect(of('generatorWh')).toEqual([400, 400, 0]);
    expect(of('fuelL')).toEqual([0.533333, 0.533333, 0]);
  });

  // 400 W go straight to the load and 1000 W through a charger of 80 %, which draws 1250 W: 1650 of 2000 W, and of the 1.1 L/h
  // between idling and full load as much.
  test('with an AC output gives what its charger draws, not what it gives, and burns for it', () => {
    const output = { bus: 'ac', powerW: 2000, charger: { powerW: 1000, efficiency: 0.8 } } as const;
    const plant = plantOf({ bank: idealBank(10_000), acW: () => 400, generator: { ...set, output } });
    const { of } = lastHours(1, plant, 0.3);
    expect([of('generatorH'), of('generatorWh'), of('chargerLossWh')]).toEqual([[1], [1650], [250]]);
    expect(of('fuelL')[0]).toBeCloseTo(0.5 + (1.1 * 1650) / 2000, 6);
    expect(of('stateOfCharge')).toEqual([0.4]);
  });

  test('gives nothing while it warms up and while it cools down', () => {
    const generator = { ...set, warmUpMin: 12, coolDownMin: 6 };
    const { of } = lastHours(1, plantOf({ bank: idealBank(1000), sunW: () => 300, dcW: () => 300, generator }), 0.3);
    // 12 minutes without, half an hour that puts 600 Wh into the bank, 6 minutes without, and 12 minutes at rest.
    expect([of('generatorH'), of('generatorWh'), of('stateOfCharge')]).toEqual([[0.8], [600], [0.9]]);
  });

  // Its electronics give 240 W: in the first hour the engine carries 500 W and fills the bank, which would have ended it at once.
  test('carries a load that is too much for the bank from its first moment to its last, however full the bank is', () => {
    const bank = bankOf(10_000, { dischargeLimitAmps: () => 10 });
    const { of } = lastHours(3, plantOf({ bank, dcW: atEnd(200, 500, 200), generator: set }), 0.95);
    expect(of('starts')).toEqual([0, 1, 0]);
    expect(of('generatorH')).toEqual([0, 1, 0]);
    expect(of('darkWh')).toEqual([0, 0, 0]);
  });

  // The bank takes 50 A x (1 - charge), and of 1200 W the load leaves 300 W: 24 V x 50 A x 0.25. It gets them until it is at 75 %,
  // a quarter of 1000 Wh in 50 minutes, and gives 150 Wh in the ten that are left.
  test('told to stop at the end of bulk stops where the bank takes less than the engine can give', () => {
    const bank = bankOf(1000, { acceptanceAmps: (s) => 50 * (1 - s) });
    const start = [{ kind: 'charge', below: 0.5 }] as const;
    const generator: GeneratorSettings = { ...set, start, stop: [{ kind: 'bulk-end' }] };
    const { of } = lastHours(1, plantOf({ bank, dcW: () => 900, generator }), 0.5);
    expect(of('generatorH')[0]).toBeCloseTo(5 / 6, 4);
    expect(of('generatorWh')[0]).toBeCloseTo(1000, 1);
    expect(of('stateOfCharge')[0]).toBeCloseTo(0.6, 4);
  });

  // The bank takes 1200 W x (1 - s^2): an engine of p watts gives them until s = root of 1 - p / 1200. Half of such runs went on
  // for two to four minutes.
  test.each([300, 317, 334, 351, 432])(
    'of %d W stops so where it gives all it can to a bank that takes ever less',
    (powerW) => {
      const bank = bankOf(1000, { acceptanceAmps: (s) => 50 * (1 - s * s) });
      const generator: GeneratorSettings = { ...set, output: { bus: 'dc', powerW }, stop: [{ kind: 'bulk-end' }] };
      const { ledger } = lastHours(3, plantOf({ bank, generator }), 0.3);
      const bulkEnd = Math.sqrt(1 - powerW / 1200);
      expect(yearSum(ledger.generatorH)).toBeCloseTo((1000 * (bulkEnd - 0.3)) / powerW, 3);
      expect(ledger.stateOfCharge[8759]).toBeCloseTo(bulkEnd, 4);
    },
  );

  // An hour of absorption brings the chargers to float: there the run ends, or with its shortest time.
  test.each([
    [0, [1, 0]],
    [1.25, [1, 0.25]],
  ])('whose shortest run is %d h stops when the chargers float, below the charge that was set', (minimumRunH, runH) => {
    const generator: GeneratorSettings = { ...set, minimumRunH };
    const plant = plantOf({ bank: bankOf(10_000, inBulk), generator });
    const rules = { ...plant.chargeRules, absorptionH: 1, tailAmps: 0 };
    const { of } = lastHours(2, { ...plant, chargeRules: rules }, 0.3);
    expect(of('generatorH')).toEqual(runH);
  });
});

describe('chargers', () => {
  // 20 A at 24 V are 480 W.
  test('go to float when they have held the bank at its voltage for as long as absorption lasts', () => {
    const plant = plantOf({ bank: bankOf(10_000, inBulk), sunW: () => 1000 });
    const rules = { ...plant.chargeRules, absorptionH: 1.25, tailAmps: 0 };
    const { of } = lastHours(27, { ...plant, chargeRules: rules }, 0.1);
    expect(of('bankChargeWh').slice(0, 6)).toEqual([480, 120, 0, 480, 120, 0]);
    expect(of('daysSinceFull').slice(0, 5)).toEqual([0, 0, 0, 1, 0]);
  });

  test('that have less than the bank would take do not float', () => {
    const plant = plantOf({ bank: bankOf(10_000, inBulk), sunW: () => 400 });
    const rules = { ...plant.chargeRules, absorptionH: 1.25, tailAmps: 0 };
    expect(lastHours(3, { ...plant, chargeRules: rules }, 0.1).of('bankChargeWh')).toEqual([400, 400, 400]);
  });

  // An hour of absorption, one of a load that draws the bank down to 30 %, and one in which the engine carries load and charge.
  test('begin a new charge with the engine, though the sun has brought them to float on the same day', () => {
    const bank = bankOf(2000, inBulk);
    const plant = plantOf({ bank, sunW: atEnd(1000, 0, 0), dcW: atEnd(0, 880, 400), generator: set });
    const { of } = lastHours(3, { ...plant, chargeRules: { ...plant.chargeRules, absorptionH: 1, tailAmps: 0 } }, 0.5);
    expect(of('stateOfCharge')).toEqual([0.74, 0.3, 0.54]);
    expect(of('generatorWh')).toEqual([0, 0, 880]);
  });
});

describe('pieces of an hour', () => {
  // ds/dt = 1 - s: what is missing falls by the factor e in an hour.
  test('follow a bank whose acceptance falls as it fills', () => {
    const bank = bankOf(2400, { acceptanceAmps: (s) => 100 * (1 - s) });
    const { of } = lastHours(2, plantOf({ bank, sunW: () => 1e5 }), 0.2);
    const error = (hour: number) => Math.abs(of('stateOfCharge')[hour - 1]! - (1 - 0.8 * Math.exp(-hour)));
    expect(error(1)).toBeLessThan(2e-4);
    expect(error(2)).toBeLessThan(2e-4);
  });

  // At 24 V x s the current is the power over it: s ds = -dt / 24 h, s falls as a root.
  test('follow a bank whose voltage bends as it empties by the middle of each, others by its start', () => {
    const bending = (bendsAtEnds: boolean) => {
      const bank = bankOf(2400, { dischargeAmps: (powerW, s) => powerW / (24 * s) });
      const traits = { ...bank.traits, bendsAtEnds };
      const { of } = lastHours(4, plantOf({ bank: { ...bank, traits }, dcW: () => 240 }), 1);
      return Math.abs(of('stateOfCharge')[3]! - Math.sqrt(1 - 2 * 4 * 0.1));
    };
    expect(bending(true)).toBeLessThan(1e-3);
    expect(bending(false)).toBeGreaterThan(1e-3);
  });

  /** How often the buses are solved in one hour. */
  function solvedIn(parts: PlantParts, s: number, bank: Bank): number {
    let solved = 0;
    const setVoltage = () => {
      solved++;
      return 24;
    };
    lastHours(1, plantOf({ ...parts, bank: { ...bank, setVoltage } }), s);
    return solved;
  }

  // Millions of hours are run: a charge is solved at its start and its middle, a discharge at its start, and a running engine asks at
  // the start whether the bank would do without it.
  test('are no more than the hour needs', () => {
    const bank = idealBank(10_000);
    expect(solvedIn({}, 0.5, bank)).toBe(1);
    expect(solvedIn({ sunW: () => 150 }, 0.5, bank)).toBe(2);
    expect(solvedIn({ dcW: () => 150 }, 0.5, bank)).toBe(1);
    expect(solvedIn({ dcW: () => 150, generator: set }, 0.5, bank)).toBe(1);
    // A change of 6 % is divided into three of 2 %, and no crumb of the hour is left over.
    expect(solvedIn({ sunW: () => 590 }, 0.5, bank)).toBe(6);
    expect(solvedIn({ sunW: () => 600 }, 0.5, bank)).toBe(6);
    expect(solvedIn({ dcW: () => 590 }, 0.5, bank)).toBe(3);
    // Near full 8 % of what is missing: 1 - 0.92^n of 10 % is a bit more than 5 % for n = 9.
    expect(solvedIn({ sunW: () => 500 }, 0.9, bank)).toBe(18);
    // 300 W are two pieces: the start and its two solutions, then the question and two more.
    expect(solvedIn({ dcW: () => 900, generator: set }, 0.3, bank)).toBe(6);
    // The end of the shortest run is nothing while the charge is not at its stop.
    expect(solvedIn({ dcW: () => 1100, generator: { ...set, minimumRunH: 0.5 } }, 0.3, bank)).toBe(3);
    // An absorption that ends four milliseconds before the hour ends with it.
    const brief = bankOf(100_000, { ...inBulk, absorptionHours: 1 - 1e-6 });
    expect(solvedIn({ sunW: () => 1000 }, 0.5, brief)).toBe(2);
    // That the bank begins to refuse some of the sun, here at a half, ends no piece.
    const refusing = bankOf(10_000, { acceptanceAmps: (s) => 50 * (1 - s) });
    expect(solvedIn({ sunW: () => 600 }, 0.45, refusing)).toBe(6);
  });

  // From its first moment on the engine gives more than the 20 A that the bank takes, and its shortest run keeps it going.
  test('are no more for an engine that waits for the end of its shortest run', () => {
    const bank = bankOf(10_000, { acceptanceAmps: () => 20 });
    const generator: GeneratorSettings = { ...set, stop: [{ kind: 'bulk-end' }], minimumRunH: 2 };
    expect(solvedIn({ generator }, 0.3, bank)).toBeLessThan(20);
  });

  // 0.6 Wh at 500 W, up and down: some 64 pieces of 2 % and of 8 % of what is missing. The four hundredth is in the seventh charge,
  // and the engine then runs for the rest of the hour.
  test('are at most four hundred, and the last takes the rest of the hour', () => {
    const generator: GeneratorSettings = { ...set, output: { bus: 'dc', powerW: 1000 } };
    const { of } = lastHours(1, plantOf({ bank: idealBank(1), dcW: () => 500, generator }), 0.3);
    expect(of('starts')).toEqual([7]);
    expect(of('generatorH')[0]).toBeGreaterThan(0.98);
  });
});
