import { bench } from 'vitest';
import { controllerYear } from './controller-year.js';
import { dcYear } from './dc-year.js';
import { maximumPower } from './operating-point.js';
import { solveModule } from './solve-module.js';
import { voltageGridYear } from './voltage-grid.js';

// Run by hand: npx vitest bench packages/array. Invented sheet and year; the same numbers every run.
const sheet = { vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, vocPerK: -0.0031, iscPerK: 0.0005 };
const parameters = solveModule(sheet);
const effectiveWm2 = Float64Array.from({ length: 8760 }, (_, h) =>
  Math.max(0, 900 * Math.sin(((h % 24) - 6) * 0.26) * (0.4 + 0.6 * ((h * 37) % 11 > 4 ? 1 : 0.3))),
);
const cellC = Float64Array.from({ length: 8760 }, (_, h) => 8 - 20 * Math.cos(h / 1394) + 0.03 * effectiveWm2[h]!);
const input = { parameters, inSeries: 2, strings: 3, cableOhm: 0.05, effectiveWm2, cellC };
const point = new Float64Array(3);

bench('8760 maximum-power points, all of them lit', () => {
  for (let h = 0; h < 8760; h++) maximumPower(parameters, 1 + ((h * 37) % 1000), -20 + ((h * 13) % 80), point);
});

bench('dcYear', () => {
  dcYear(input);
});

bench('voltageGridYear with 13 voltages', () => {
  voltageGridYear(input, 40, 64);
});

bench('controllerYear with a maximum-power controller', () => {
  controllerYear(
    input,
    { kind: 'maximum-power', maxVoltageV: 150, maxCurrentA: 60, efficiency: 0.97, nightDrawW: 1 },
    20,
    32,
  );
});

bench('solveModule', () => {
  solveModule(sheet);
});
