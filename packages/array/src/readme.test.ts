import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { busPowerW, controllerYear, dcYear, solveModule, windCellC } from './index.js';

// Line breaks and table padding are the formatter's.
const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');
const module36 = solveModule({
  ...{ powerW: 80, vmpV: 17.6, impA: 4.55, vocV: 21.8, iscA: 4.85, cells: 36, vocPerK: -0.0036, iscPerK: 0.00065 },
});

test('the example gives the results printed in it', () => {
  const input = {
    ...{ parameters: module36, inSeries: 2, strings: 4, cableOhm: 0.02 },
    ...{ effectiveWm2: Float64Array.of(900), cellC: Float64Array.of(windCellC(-10, 900, 2)) },
  };
  const dc = dcYear(input);
  const tracking = {
    kind: 'maximum-power',
    maxVoltageV: 100,
    maxCurrentA: 60,
    efficiency: 0.97,
    nightDrawW: 1,
  } as const;
  const tracked = busPowerW(controllerYear(input, tracking, 20, 32), 0, 26);
  const direct = busPowerW(controllerYear(input, { kind: 'direct', nightDrawW: 0.1 }, 20, 32), 0, 26);
  expect(readme).toContain(`// ${dc.powerW[0]!.toFixed(1)} W at ${dc.voltageV[0]!.toFixed(2)} V`);
  expect(readme).toContain(`// ${tracked.toFixed(1)} W`);
  expect(readme).toContain(`// ${direct.toFixed(1)} W`);
});

test('the table of gains is what the physics gives', () => {
  const bankVs = [12.2, 13, 13.6, 14.4];
  const days: [string, number, number, number][] = [
    ['-25 degC, 1000 W/m2, 3 m/s', -25, 1000, 3],
    ['-10 degC, 900 W/m2, 2 m/s', -10, 900, 2],
    ['10 degC, 1000 W/m2, 2 m/s', 10, 1000, 2],
    ['30 degC, 1000 W/m2, 1 m/s', 30, 1000, 1],
  ];
  const tracking = {
    kind: 'maximum-power',
    maxVoltageV: 100,
    maxCurrentA: 60,
    efficiency: 0.97,
    nightDrawW: 1,
  } as const;
  for (const [name, airC, light, wind] of days) {
    const input = {
      ...{ parameters: module36, inSeries: 1, strings: 4, cableOhm: 0.02 },
      ...{ effectiveWm2: Float64Array.of(light), cellC: Float64Array.of(windCellC(airC, light, wind)) },
    };
    const tracked = controllerYear(input, tracking, 10, 16);
    const direct = controllerYear(input, { kind: 'direct', nightDrawW: 0 }, 10, 16);
    const gains = bankVs.map((v) => {
      const per = Math.round(100 * (busPowerW(tracked, 0, v) / busPowerW(direct, 0, v) - 1));
      return `${per > 0 ? '+' : ''}${per} %`;
    });
    expect(readme).toContain(`| ${name} | ${gains.join(' | ')} |`);
  }
});
