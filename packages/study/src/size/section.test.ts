import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSite, SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { readSize } from './section.js';

const file = join(import.meta.dirname, '../../../../examples/kettle-pond.yaml');
const example = readFileSync(file, 'utf8').replace(/^(sweep|size|carry):\n?( .*\n)+/gm, '');
/** The example, whose engine may be taken away, with a section behind it. */
const withSize = (section: string, engine = true) =>
  parseSite(`${engine ? example : example.replace(/^generator:\n( .*\n)+/m, '')}\n${section}`, file);
const choose = 'choose: { arrays.garden pole.strings: 2..4 }';
const sized = (rest: string, asked = {}, engine = true) =>
  readSize(withSize(`size: { ${choose}, ${rest} }\n`, engine), asked);

function problemOf(section: string): string {
  try {
    readSize(withSize(section));
  } catch (error) {
    expect(error).toBeInstanceOf(SiteError);
    const { path, message } = (error as SiteError).problems[0]!;
    return `${path}: ${message}`;
  }
  return '';
}

test('targets are read in the units they are judged in, and the rest is what is customary', () => {
  const question = sized('target: { generatorHours: 60 h, fuel: 100 L, darkHours: 2 h, autonomy: 4 days }');
  expect(question).toStrictEqual({
    axes: [{ path: 'arrays.garden pole.strings', values: [2, 3, 4] }],
    targets: { generatorHours: 60, fuelLitres: 100, darkHours: 2, autonomyDays: 4 },
    judged: { kind: 'usual', seed: 1 },
    least: 'array',
    hand: { autonomyDays: 4, ratio: 1.3, losses: 0.15, margin: 1.1 },
  });
});

test('only the targets that are named are asked for', () => {
  expect(sized('target: { fuel: 100 L }').targets).toStrictEqual({ fuelLitres: 100 });
  expect(sized('target: { darkHours: 0 h }').targets).toStrictEqual({ darkHours: 0 });
});

test('years and seed of whoever asks go before those of the section, and these before the customary ones', () => {
  const target = 'target: { fuel: 100 L }';
  expect(sized(`${target}, years: 12, seed: 5`).judged).toStrictEqual({ kind: 'usual', years: 12, seed: 5 });
  expect(sized(`${target}, years: 12, seed: 5`, { years: 3, seed: 9 }).judged).toStrictEqual({
    kind: 'usual',
    years: 3,
    seed: 9,
  });
});

test('one year in ten is told from forty years unless others are named, and from no fewer than ten', () => {
  const target = 'target: { fuel: 100 L, in: one-in-ten }';
  expect(sized(target).judged).toStrictEqual({ kind: 'one-in-ten', years: 40, seed: 1 });
  expect(sized(`${target}, years: 10`).judged.years).toBe(10);
  expect(sized(`${target}, years: 1`).judged.years).toBe(1);
  expect(problemOf(`size: { ${choose}, ${target}, years: 9 }\n`)).toMatch(
    /^size\.target\.in: a one-in-ten year cannot be told from 9 years/,
  );
  expect(sized('target: { fuel: 100 L }, years: 9').judged.years).toBe(9);
});

test('days of autonomy by hand are those of the hand section, of the target, or three with an engine and seven without', () => {
  const days = (rest: string, engine = true) => sized(rest, {}, engine).hand.autonomyDays;
  expect(days('target: { autonomy: 4 days }, hand: { autonomy: 5 days }')).toBe(5);
  expect(days('target: { autonomy: 36 h }')).toBe(1.5);
  expect(days('target: { fuel: 100 L }')).toBe(3);
  expect(days('target: { autonomy: 0 days }')).toBe(3);
  expect(days('target: { darkHours: 10 h }', false)).toBe(7);
});

test('no section, no target, a value that fits nothing and too many designs are told where they stand', () => {
  expect(problemOf('')).toMatch(/^size: the site file has no size section/);
  expect(problemOf(`size: { ${choose}, target: {} }\n`)).toMatch(/^size\.target: found no target/);
  expect(problemOf('size: { choose: { bank.capacity: [500 Ah, 5 m] }, target: { fuel: 1 L } }\n')).toMatch(
    /^size\.choose\.bank\.capacity: "5 m" fits no design/,
  );
  const many = (last: number) =>
    `size: { choose: { bank.capacity: 101..350 Ah, inverter.idle: 1..${last} W }, target: { fuel: 1 L } }\n`;
  expect(problemOf(many(201))).toMatch(/^size\.choose: the ranges make 50250 designs, expected at most 50000/);
  expect(problemOf(many(200))).toBe('');
});
