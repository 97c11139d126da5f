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

// Copetti, Lorenzo & Chenlo (1993): charge efficiency at I10, recomputed from the printed equation.
test.each([
  [0.8, 0.931],
  [0.9, 0.737],
  [0.95, 0.488],
])('charge efficiency at the ten-hour rate and state %d is %d', (s, efficiency) => {
  expect(leadAcidChargeEfficiency(0.1, s)).toBeCloseTo(efficiency, 3);
});

// Copetti et al. (1993), the printed equations worked by hand at 25 degC and 5 degC:
// ln 1.1 = 0.095310; 2.24 + 1.97 x 0.095310 = 2.42776; 2.45 + 2.011 x 0.095310 = 2.64167; at 5 degC 4 % more.
test('gassing and final voltage at C/10 are 2.428 and 2.642 V', () => {
  expect(gassingCellV(0.1, 25)).toBeCloseTo(2.42776, 5);
  expect(finalCellV(0.1, 25)).toBeCloseTo(2.64167, 5);
  expect(gassingCellV(0.1, 5)).toBeCloseTo(2.42776 * 1.04, 5);
});

// Capacity ratios of flooded tubular cells run near 1.0 / 1.2 / 1.4 for C10 / C20 / C100 labels: common practice, no
// source; the equation is from memory of Copetti et al. (1993).
test('a bank emptied in 20 or 100 hours gives about a fifth and a half more than in ten', () => {
  expect(capacityByRate(1)).toBeCloseTo(1, 9);
  expect(capacityByRate(0.59)).toBeCloseTo(1.18, 2);
  expect(capacityByRate(0.149)).toBeCloseTo(1.49, 2);
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
    expect(exponent(fastH, slowH)).toBeGreaterThan(1.16);
    expect(exponent(fastH, slowH)).toBeLessThan(1.6);
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
    const difference = capacityByTemperature((degF - 32) / 1.8) - 1 / factor;
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
  for (const [degF, factor] of ieee485) {
    const tempC = (degF - 32) / 1.8;
    const share = drawn(tempC) / at25C;
    if (degF < 70) {
      expect(share).toBeLessThan(capacityByTemperature(tempC));
      expect(share - 1 / factor).toBeGreaterThan(0);
    }
    expect(Math.abs(share - 1 / factor)).toBeLessThan(0.16);
  }
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
  expect(acidFreezingC(density)).toBeCloseTo(freezes, 9);
});

// Trade table of relative density by state of charge, flooded deep-cycle cells at 25 degC.
test.each([
  [1, 1.265],
  [0.75, 1.225],
  [0.5, 1.19],
  [0.25, 1.155],
  [0, 1.12],
])('at state %d the acid has relative density %d', (s, density) => {
  expect(electrolyteDensity(s)).toBeCloseTo(density, 9);
});

// Taper of a flooded bank held at 2.40 V per cell and 25 degC: about C/12-C/16 at 80 %, C/30 at 90 %, C/40-C/70 at
// 95 %, and 1-2 % of capacity near full; common practice, no source.
test('acceptance at absorption tapers as flooded banks do', () => {
  const bank = createBank({ chemistry: 'flooded-lead-acid', voltageV: 24, capacityAh: 1000, atRateH: 10 });
  const hours = (s: number) => bank.refAh / bank.acceptanceAmps(s, 25, 0);
  expect(hours(0.8)).toBeGreaterThan(11);
  expect(hours(0.8)).toBeLessThan(17);
  expect(hours(0.9)).toBeGreaterThan(25);
  expect(hours(0.9)).toBeLessThan(35);
  expect(hours(0.95)).toBeGreaterThan(38);
  expect(hours(0.95)).toBeLessThan(75);
  expect(hours(0.985)).toBeGreaterThan(50);
  expect(hours(0.985)).toBeLessThan(100);
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
  expect(roundTrip(20, 0.5, 0.9)).toBeGreaterThan(0.8);
  expect(roundTrip(20, 0.5, 0.9)).toBeLessThan(0.9);
  expect(roundTrip(100, 0.5, 0.9)).toBeGreaterThan(roundTrip(20, 0.5, 0.9) + 0.04);
  expect(roundTrip(20, 0.9, 0.98)).toBeLessThan(0.7);
});
