import fc from 'fast-check';
import { expect, test } from 'vitest';
import { diodeCurrent, diodeOpenCircuit, diodePeak } from './single-diode.js';

// Light of 0 to 12 A, a saturation current of 1e-12 to 1e-6 A, 1 to 2 V of ideality for a module of 36 to 72 cells.
const curve = fc.record({
  il: fc.integer({ min: 0, max: 1200 }).map((part) => part / 100),
  i0: fc.integer({ min: -12, max: -6 }).map((exponent) => 10 ** exponent),
  a: fc.integer({ min: 100, max: 200 }).map((part) => part / 100),
  rs: fc.integer({ min: 0, max: 100 }).map((part) => part / 100),
  g: fc.integer({ min: 0, max: 500 }).map((part) => part / 1000),
});

test('the current lies on the curve at every voltage from deep reverse to far above open circuit', () => {
  fc.assert(
    fc.property(curve, fc.integer({ min: -500, max: 5000 }), ({ il, i0, a, rs, g }, tenthVolts) => {
      const v = tenthVolts / 10;
      // Without series resistance the exponential alone is the current: no finite one far above open circuit.
      fc.pre(rs > 0 || v < 60);
      const current = diodeCurrent(il, i0, a, rs, g, v);
      const x = v + current * rs;
      const largest = Math.abs(il) + Math.abs(current) + g * Math.abs(x);
      expect(Math.abs(il - i0 * Math.expm1(x / a) - g * x - current)).toBeLessThan(1e-6 * (largest + 1e-3));
    }),
    { numRuns: 500 },
  );
});

// Two resistors and a source: I = (IL - G V) / (1 + Rs G).
test('in reverse, where the diode does nothing, the current is that of the two resistances', () => {
  for (const v of [-300, -20, -3]) expect(diodeCurrent(2, 1e-13, 1, 0.5, 3, v)).toBeCloseTo((2 - 3 * v) / 2.5, 9);
  // Where drive is nothing at all: 2 A through half an ohm against 1 V.
  expect(diodeCurrent(2 - 2 ** -30, 2 ** -30, 1, 0.5, 0, -1)).toBeCloseTo(2, 8);
});

test('without series resistance the current is that of light, diode and shunt', () => {
  // exp(2 / 2) = e: 5 - 0.1 (e - 1) - 0.25 x 2.
  expect(diodeCurrent(5, 0.1, 2, 0, 0.25, 2)).toBeCloseTo(5 - 0.1 * (Math.E - 1) - 0.5, 12);
  // A kilovolt would be e^1000: the number stays one.
  expect(Number.isFinite(diodeCurrent(5, 1e-9, 1, 0, 0, 1000))).toBe(true);
  expect(diodeCurrent(5, 1e-9, 1, 0, 0, 1000)).toBeLessThan(-1e200);
});

test('open circuit is where light, diode and shunt balance', () => {
  // Without a shunt in closed form: IL = I0 (e - 1) stands at a, and no light at 0 V.
  expect(diodeOpenCircuit(0.5 * (Math.E - 1), 0.5, 1.3, 0)).toBeCloseTo(1.3, 12);
  expect(diodeOpenCircuit(0, 1e-9, 1.3, 0.01)).toBe(0);
  // In dim light a poor shunt alone: 1 mA through 100 ohm.
  expect(diodeOpenCircuit(1e-3, 1e-13, 1.3, 0.01)).toBeCloseTo(0.1, 9);
  fc.assert(
    fc.property(curve, ({ il, i0, a, g }) => {
      const v = diodeOpenCircuit(il, i0, a, g);
      expect(Math.abs(il - i0 * Math.expm1(v / a) - g * v)).toBeLessThan(1e-9 * (1 + il));
    }),
  );
});

const point = new Float64Array(3);

test('no point of the curve gives more than its peak, which lies on it, behind a long thin cable too', () => {
  fc.assert(
    fc.property(curve, fc.integer({ min: 0, max: 20 }), ({ il, i0, a, rs: own, g }, cableOhm) => {
      fc.pre(il > 0);
      const rs = own + cableOhm;
      diodePeak(il, i0, a, rs, g, point);
      const [power, voltage, current] = [point[0]!, point[1]!, point[2]!];
      expect(power).toBeCloseTo(voltage * current, 12);
      expect(diodeCurrent(il, i0, a, rs, g, voltage)).toBeCloseTo(current, 6);
      const open = diodeOpenCircuit(il, i0, a, g);
      for (let k = 0; k <= 100; k++) {
        const v = (open * k) / 100;
        expect(v * diodeCurrent(il, i0, a, rs, g, v)).toBeLessThanOrEqual(power * (1 + 1e-9) + 1e-12);
      }
    }),
    { numRuns: 100 },
  );
});

// A battery of 5 A x 4 ohm = 20 V behind 4 ohm in parallel and 1 ohm in series gives most into 5 ohm: 2 A at 10 V.
test('where the diode never conducts, the peak is that of matched resistances', () => {
  diodePeak(5, 1e-40, 1, 1, 0.25, point);
  expect([...point].map((value) => Number(value.toFixed(6)))).toEqual([20, 10, 2]);
});

// Nearly a source of 12.83 V, a ln(1 + IL / I0), behind 20 ohm: most at half of it, 12.83^2 / 80.
test('behind a large resistance the peak is that of a battery with it inside', () => {
  diodePeak(14, 1e-10, 0.5, 20, 0, point);
  const openV = 0.5 * Math.log1p(14e10);
  expect(point[0]! / (openV ** 2 / 80)).toBeCloseTo(1, 2);
  expect(point[1]! / (openV / 2)).toBeCloseTo(1, 2);
});
