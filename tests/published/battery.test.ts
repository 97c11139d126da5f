import {
  acidFreezingC,
  capacityByDischargeTime,
  capacityByRate,
  capacityByTemperature,
  createBank,
  electrolyteDensity,
  finalCellV,
  gassingCellV,
  leadAcidChargeEfficiency,
  rateWeightOf,
} from '@wintergap/battery';
import { expect, test } from 'vitest';
import { holds, holdsAll, liesWithin, type Source, type Sure } from '../validation/hold.js';

const copetti = (sure: Sure): Source => ({ from: 'Copetti, Lorenzo and Chenlo 1993', sure });

// Copetti, Lorenzo & Chenlo (1993): charge efficiency at I10, recomputed from the printed equation.
test.each([
  [0.8, 0.931],
  [0.9, 0.737],
  [0.95, 0.488],
])('charge efficiency at the ten-hour rate and state %d is %d', (s, efficiency) => {
  holds(
    copetti('recomputed'),
    `charge efficiency at C/10 and ${100 * s} %`,
    leadAcidChargeEfficiency(0.1, s),
    efficiency,
    { within: 0.0005 },
  );
});

// Copetti et al. (1993), the printed equations worked by hand at 25 degC and 5 degC:
// ln 1.1 = 0.095310; 2.24 + 1.97 x 0.095310 = 2.42776; 2.45 + 2.011 x 0.095310 = 2.64167; at 5 degC 4 % more.
test('gassing and final voltage at C/10 are 2.428 and 2.642 V', () => {
  holds(copetti('recomputed'), 'gassing voltage at C/10, 25 degC, V a cell', gassingCellV(0.1, 25), 2.42776, {
    within: 5e-6,
  });
  holds(copetti('recomputed'), 'final voltage at C/10, 25 degC, V a cell', finalCellV(0.1, 25), 2.64167, {
    within: 5e-6,
  });
  holds(copetti('recomputed'), 'gassing voltage at C/10, 5 degC, V a cell', gassingCellV(0.1, 5), 2.42776 * 1.04, {
    within: 5e-6,
  });
});

// Capacity ratios of flooded tubular cells run near 1.0 / 1.2 / 1.4 for C10 / C20 / C100 labels: common practice, no
// source; the equation is from memory of Copetti et al. (1993).
test('a bank emptied in 20 or 100 hours gives about a fifth and a half more than in ten', () => {
  expect(capacityByRate(1)).toBeCloseTo(1, 9);
  holds(copetti('from memory'), 'capacity at C20 over C10', capacityByRate(0.59), 1.18, { within: 0.005 });
  holds(copetti('from memory'), 'capacity at C100 over C10', capacityByRate(0.149), 1.49, { within: 0.005 });
});

// Peukert's exponent, I^n t = constant, as textbooks give it: 1.05-1.15 AGM, 1.1-1.25 gel, 1.2-1.6 flooded (from memory).
// Between two discharge times n = 1 / (1 - ln(C2/C1) / ln(t2/t1)).
test('capacity by rate is that of flooded cells by their Peukert exponents', () => {
  const exponent = (fastH: number, slowH: number) =>
    1 / (1 - Math.log(capacityByDischargeTime(slowH) / capacityByDischargeTime(fastH)) / Math.log(slowH / fastH));
  for (const [fastH, slowH] of [
    [5, 20],
    [5, 100],
    [10, 100],
    [20, 100],
  ] as const) {
    const textbooks: Source = { from: 'textbook exponents of flooded cells', sure: 'from memory' };
    liesWithin(textbooks, `Peukert exponent from ${fastH} to ${slowH} h`, exponent(fastH, slowH), 1.16, 1.6);
  }
});

// Recomputed from the printed equation with I = C20/20 and C100/100; flooded deep-cycle labels run 1.08-1.12 and
// 1.25-1.4 (common practice, no source): a label with two points brings the rule to them.
test('C20 is 1.18 and C100 1.49 times C10, and 1.1 and 1.3 where the label says so', () => {
  expect(capacityByDischargeTime(20)).toBeCloseTo(1.18, 2);
  expect(capacityByDischargeTime(100)).toBeCloseTo(1.49, 2);
  const weight = rateWeightOf({ capacityAh: 1000, atRateH: 20 }, { capacityAh: 1180, atRateH: 100 });
  expect(capacityByDischargeTime(20, weight)).toBeGreaterThan(1.08);
  expect(capacityByDischargeTime(20, weight)).toBeLessThan(1.15);
  expect(capacityByDischargeTime(100, weight)).toBeGreaterThan(1.25);
  expect(capacityByDischargeTime(100, weight)).toBeLessThan(1.4);
});

// IEEE 485, Table 1, cell size factors by temperature in degF, from memory; the capacity left is about the inverse.
const ieee: Source = { from: 'IEEE 485, table 1, inverted', sure: 'from memory' };
const ieee485 = [
  [25, 1.52],
  [30, 1.43],
  [35, 1.35],
  [40, 1.3],
  [45, 1.25],
  [50, 1.19],
  [55, 1.15],
  [60, 1.11],
  [65, 1.08],
  [70, 1.04],
  [77, 1],
  [80, 0.98],
  [85, 0.96],
  [90, 0.94],
  [100, 0.91],
  [110, 0.88],
  [120, 0.86],
] as const;

// The two do not agree in the cold, and nothing here is tuned to hide it: the model takes 0.5 % per K, the standard
// about twice that, since it sizes for an end voltage under load. Shares of the 25 degC capacity:
//   degF   25   30   35   40   45   50   60   70   77   90  100  120
//   model 0.86 0.87 0.88 0.90 0.91 0.93 0.95 0.98 1.00 1.04 1.06 1.12
//   485   0.66 0.70 0.74 0.77 0.80 0.84 0.90 0.96 1.00 1.06 1.10 1.16
test('capacity by temperature is at most 0.2 above IEEE 485 in the cold and 0.05 below it in the heat', () => {
  for (const [degF, factor] of ieee485) {
    const share = capacityByTemperature((degF - 32) / 1.8);
    const difference = share - 1 / factor;
    const within = degF < 77 ? 0.2 : 0.05;
    if (degF % 20 === 0 || degF === 25)
      holds(ieee, `capacity at ${degF} degF, share of that at 77 degF`, share, 1 / factor, { within });
    if (degF < 77) {
      expect(difference).toBeGreaterThan(0);
      expect(difference).toBeLessThan(0.2);
    } else {
      expect(difference).toBeLessThanOrEqual(1e-12);
      expect(difference).toBeGreaterThan(-0.05);
    }
  }
});

// The standard's way of asking: charge drawn at C/8 until the cell is at 1.75 V. The sag in the cold closes a quarter
// of the gap: 0.81 against 0.66 at 25 degF.
test('drawn at C/8 to 1.75 V the model comes nearer to IEEE 485 but stays above it in the cold', () => {
  const cell = createBank({ chemistry: 'flooded-lead-acid', voltageV: 2, capacityAh: 100, atRateH: 10 });
  const drawn = (tempC: number): number => {
    let s = 1;
    while (cell.terminalVoltage(-12.5, s, tempC) > 1.75 && s > cell.reachableEmpty(tempC, 12.5)) s -= 0.002;
    return 1 - s;
  };
  const at25C = drawn(25);
  const found: [number, number][] = [];
  for (const [degF, factor] of ieee485) {
    const tempC = (degF - 32) / 1.8;
    const share = drawn(tempC) / at25C;
    if (degF < 70) {
      expect(share).toBeLessThan(capacityByTemperature(tempC));
      expect(share - 1 / factor).toBeGreaterThan(0);
    }
    found.push([share, 1 / factor]);
  }
  holdsAll(ieee, 'capacity drawn at C/8 to 1.75 V a cell, 25 to 120 degF', found, { within: 0.16 });
});

// Vinal, Storage Batteries: freezing of sulphuric acid by relative density, from memory.
test.each([
  [1, 0],
  [1.05, -3.3],
  [1.1, -7.7],
  [1.15, -15],
  [1.2, -27],
  [1.25, -52],
  [1.3, -70],
])('acid of relative density %d freezes at %d degC', (density, freezes) => {
  const vinal: Source = { from: 'Vinal, Storage Batteries', sure: 'from memory' };
  holds(vinal, `freezing of acid of relative density ${density}, degC`, acidFreezingC(density), freezes, {
    within: 1e-9,
  });
});

// Trade table of relative density by state of charge, flooded deep-cycle cells at 25 degC.
test.each([
  [1, 1.265],
  [0.75, 1.225],
  [0.5, 1.19],
  [0.25, 1.155],
  [0, 1.12],
])('at state %d the acid has relative density %d', (s, density) => {
  const trade: Source = { from: 'trade table, 25 degC', sure: 'common practice' };
  holds(trade, `relative density of acid at ${100 * s} %`, electrolyteDensity(s), density, { within: 1e-9 });
});

// Taper of a flooded bank held at 2.40 V per cell and 25 degC: about C/12-C/16 at 80 %, C/30 at 90 %, C/40-C/70 at
// 95 %, and 1-2 % of capacity near full; common practice, no source.
test('acceptance at absorption tapers as flooded banks do', () => {
  const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 10 });
  const hours = (s: number) => bank.refAh / bank.acceptanceAmps(s, 25, 0);
  const trade: Source = { from: 'taper of flooded banks', sure: 'common practice' };
  const bounds = [
    [0.8, 11, 17],
    [0.9, 25, 35],
    [0.95, 38, 75],
    [0.985, 50, 100],
  ] as const;
  for (const [s, low, high] of bounds) {
    liesWithin(trade, `acceptance at 2.40 V a cell and ${100 * s} %, hours of C/h`, hours(s), low, high);
  }
});

// Energy efficiency of lead-acid 80-90 % in the middle of its range, near 50-70 % for the last tenth: common practice.
test('a round trip in the middle of the range gives back 80 to 90 % at C/20 and more at C/100', () => {
  const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 10 });
  const roundTrip = (rateH: number, from: number, to: number): number => {
    const amps = bank.refAh / rateH;
    let inWh = 0;
    let outWh = 0;
    for (let k = 0; k < 400; k++) {
      const s = from + ((to - from) * (k + 0.5)) / 400;
      inWh += bank.terminalVoltage(amps, s, 25) / bank.chargeEfficiency(s, amps);
      outWh += bank.terminalVoltage(-amps, s, 25);
    }
    return outWh / inWh;
  };
  const trade: Source = { from: 'energy efficiency of lead-acid', sure: 'common practice' };
  liesWithin(trade, 'energy out over in, 50 to 90 %, at C/20', roundTrip(20, 0.5, 0.9), 0.8, 0.9);
  expect(roundTrip(100, 0.5, 0.9)).toBeGreaterThan(roundTrip(20, 0.5, 0.9) + 0.04);
  liesWithin(trade, 'energy out over in, 90 to 98 %, at C/20', roundTrip(20, 0.9, 0.98), 0.45, 0.7);
});
