import { expect, test } from 'vitest';
import { moduleSheet } from './module-of-site.js';

const written = { vmp: 32.5, imp: 9.24, voc: 39.9, isc: 9.82, cells: 60, technology: 'mono' } as const;
const sheet = { vmpV: 32.5, impA: 9.24, vocV: 39.9, iscA: 9.82, cells: 60, technology: 'mono' };

test('a short data sheet gets the usual coefficients of silicon, and nothing else', () => {
  expect(moduleSheet(written as never)).toEqual({ ...sheet, vocPerK: -0.003, iscPerK: 0.0005 });
});

test('a full data sheet is taken as it is', () => {
  const full = { power: 300, powerPerK: -0.0039, vocPerK: -0.0031, iscPerK: 0, noct: 45, area: 1.6 };
  expect(moduleSheet({ ...written, ...full } as never)).toEqual({
    ...sheet,
    powerW: 300,
    powerPerK: -0.0039,
    vocPerK: -0.0031,
    iscPerK: 0,
    noctC: 45,
    areaM2: 1.6,
  });
});
