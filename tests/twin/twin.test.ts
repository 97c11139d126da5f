import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Compared, compare, moreInTwin } from './compare.js';
import { figureTables, keepFigures, keptFigures, printedTables, sums } from './figures.js';
import { pond, realPlaces } from './places.js';
import { airMass, sunOfMinutes } from './sun.js';

/** The files that state the year; the others hand sites over to it and compare. */
const statement = ['bank', 'engine', 'lead-acid', 'lithium', 'loads', 'module', 'sky', 'sun', 'year'];

test('the twin is written from the equations: it imports nothing but itself', () => {
  for (const name of statement) {
    const text = readFileSync(join(import.meta.dirname, `${name}.ts`), 'utf8');
    const from = [...text.matchAll(/from '([^']+)'/g)].map(([, file]) => file!);
    for (const file of from)
      expect(
        statement.map((part) => `./${part}.js`),
        `${name}.ts`,
      ).toContain(file);
    expect(text).not.toMatch(/import\(|require\(/);
  }
  expect(readdirSync(import.meta.dirname)).toEqual(expect.arrayContaining(statement.map((name) => `${name}.ts`)));
});

// Reda and Andreas (2004), NREL/TP-560-34302, table A5.1: zenith 50.11162, azimuth 194.34024 at 12:30:30. A short series
// is good to 0.01 degrees.
test("the twin's own sun stands where the worked example has it", () => {
  const sun = sunOfMinutes(39.742476, -105.1786, -7, 2003);
  const at = (289 * 24 + 12) * 60 + 30;
  expect(sun.zenithDeg[at]).toBeCloseTo(50.11162, 1);
  expect(Math.abs(sun.zenithDeg[at]! - 50.11162)).toBeLessThan(0.01);
  expect(Math.abs(sun.azimuthDeg[at]! - 194.34024)).toBeLessThan(0.01);
  // Kasten and Young's formula at 10 degrees of elevation.
  expect(airMass(80)).toBeCloseTo(5.586, 3);
});

/** What holds for every design. */
function expectAlike(row: Compared): void {
  const about = `${row.place} ${row.seed}, ${row.design}`;
  expect(Math.abs(moreInTwin(row, 'planeKWhPerM2')), about).toBeLessThan(0.0015);
  expect(Math.abs(moreInTwin(row, 'availableKWh')), about).toBeLessThan(0.003);
  expect(Math.abs(moreInTwin(row, 'throttledKWh')), about).toBeLessThan(0.006);
}

/** Where a place's designs hardly run their engines, one run more or less is more than a per cent, h. */
const oneRunH = 5;

const seeds = process.env.TWIN_DESIGNS;

// One with a direct controller and lead-acid, one with lithium; `npm run twin` runs them all.
test.skipIf(seeds)('two designs come out alike by minutes and by hours', () => {
  const rows = [compare(pond, 1), compare(pond, 13)];
  rows.forEach(expectAlike);
  const [packagesH, twinH] = sums(rows, 'engineH');
  expect(packagesH).toBeGreaterThan(50);
  expect(Math.abs(twinH / packagesH - 1)).toBeLessThan(0.01);
  for (const { packages, twin } of rows) expect(Math.abs(twin.lowestCharge - packages.lowestCharge)).toBeLessThan(0.01);
});

test('the figures that the README prints are those of the last campaign, and within the bounds it states', () => {
  const rows = keptFigures();
  expect(printedTables()).toBe(figureTables(rows));
  expect(rows.filter(({ place }) => place === pond.name).length).toBeGreaterThanOrEqual(50);
  rows.forEach(expectAlike);
  const places = [...new Set(rows.map(({ place }) => place))];
  for (const of of [rows, ...places.map((name) => rows.filter(({ place }) => place === name))]) {
    const [packagesH, twinH] = sums(of, 'engineH');
    expect(Math.abs(twinH - packagesH)).toBeLessThan(Math.max(0.01 * packagesH, oneRunH));
  }
  const beyond = rows.filter(({ packages, twin }) => Math.abs(twin.lowestCharge - packages.lowestCharge) > 0.01);
  expect(beyond.length / rows.length).toBeLessThan(0.1);
});

test('what the README of the project says of them is so', () => {
  const rows = keptFigures();
  const readme = readFileSync(join(import.meta.dirname, '../../README.md'), 'utf8').replace(/\s+/g, ' ');
  const [, designs, share] = /engine hours of (\d+) random designs within ([\d.]+) % in the mean/.exec(readme)!;
  expect(rows).toHaveLength(Number(designs));
  const [packagesH, twinH] = sums(rows, 'engineH');
  expect(100 * Math.abs(twinH / packagesH - 1)).toBeLessThanOrEqual(Number(share));
});

test.runIf(seeds)('all designs asked for', () => {
  const [from, to] = seeds!.split('..').map(Number) as [number, number];
  const only = process.env.TWIN_PLACE;
  const found: Compared[] = [];
  for (const place of [pond, ...realPlaces()]) {
    if (only && place.name !== only) continue;
    for (let seed = from; seed <= to; seed++) {
      const row = compare(place, seed);
      process.stdout.write(`${place.name} ${seed}: array ${(100 * moreInTwin(row, 'availableKWh')).toFixed(2)} %\n`);
      found.push(row);
      keepFigures(found);
    }
  }
});
