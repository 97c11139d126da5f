import { mountText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { changedDesign, loadSite } from '@wintergap/site';
import { type MountStudy, mountStudy } from '@wintergap/study';
import { beforeAll, expect, test } from 'vitest';
import { mountWays } from '../packages/study/src/mount/mount-designs.js';

const site = loadSite(new URL('../examples/kettle-pond.yaml', import.meta.url).pathname);
let study: MountStudy;
beforeAll(async () => {
  study = await mountStudy(site.base, undefined, readCosts(site), { years: 2, workers: 1 });
}, 600_000);
const row = (name: string) => study.rows.find((one) => one.name.startsWith(name))!;

test('what follows the sun catches more light than what does not, in the dark months less so', () => {
  const [fixed, pole, axes] = [row('fixed at'), row('pole'), row('two axes')];
  expect(pole.yearKWhM2).toBeGreaterThan(1.2 * fixed.yearKWhM2);
  expect(axes.yearKWhM2).toBeGreaterThan(pole.yearKWhM2);
  expect(pole.darkMonthsKWhM2 / fixed.darkMonthsKWhM2).toBeLessThan(pole.yearKWhM2 / fixed.yearKWhM2);
  // Diffuse light from half the sky and no more: an upright plane catches least of the fixed ones in the year.
  expect(row('fixed, vertical').yearKWhM2).toBeLessThan(fixed.yearKWhM2);
});

test('a tracker that is stuck through the dark season does no better than one that turns', () => {
  for (const { stuckHours, figures, kind } of study.rows) {
    if (kind !== 'tracking') expect(stuckHours).toBeNull();
    else expect(stuckHours!).toBeGreaterThanOrEqual(figures.generatorHours.mean - 0.5);
  }
});

test('more fixed modules do what a pole does, and its worth is the fuel and service that it saves', () => {
  expect(study.moreFixed!.scale).toBeGreaterThan(1);
  expect(study.moreFixed!.scale).toBeLessThan(3);
  const pole = row('pole');
  const saved = row('fixed at').figures.fuelLitres.mean - pole.figures.fuelLitres.mean;
  // Twenty years at 3 %: 14.877 times the yearly sum (ASTM E917, uniform present value; recomputed).
  const hours = -pole.againstFixed!.mean;
  expect(pole.worth!).toBeCloseTo(14.8775 * (saved * 1.55 + hours * 0.4), 1);
});

test('the page fits 80 columns, answers first, and names no winner by chance', () => {
  const text = mountText(study);
  for (const line of text.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
  expect(text).toMatch(/^Kettle Pond honey house, garden pole: (a pole that follows the sun|fixed at)/);
});

test('south of the equator planes face north', () => {
  const tilts = {
    fixedDeg: 50,
    seasons: [
      { fromDay: 90, tiltDeg: 60 },
      { fromDay: 273, tiltDeg: 20 },
    ] as const,
    darkDays: { from: 120, to: 211 },
  };
  for (const { mount, stuck } of mountWays(-43, tilts)) {
    if ('azimuth' in mount) expect(mount.azimuth).toBe(0);
    if (stuck && 'stuck' in stuck) expect(stuck.stuck![0]).toMatchObject({ azimuth: 0, from: 120, to: 211 });
  }
});

test('an array that is not there is refused by name', async () => {
  await expect(mountStudy(site.base, 'roof', null)).rejects.toThrow('no array is called "roof"; there are garden pole');
});

// Six modules of 39.9 V in series are 239 V at 25 degC, more than the controller's 150 V.
test('a mount for modules that exceed a limit is not praised, nor more of them', async () => {
  const weak = changedDesign(site, { 'arrays.0.inSeries': 6 });
  const over = await mountStudy(weak, undefined, null, { years: 1, workers: 1 });
  expect(over.answer.leaders).toEqual([]);
  expect(over.moreFixed).toBeNull();
  const text = mountText(over).replace(/\s+/g, ' ');
  expect(text).toContain('none is recommended');
  expect(text).not.toContain('Best, beyond chance');
});
