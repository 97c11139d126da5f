import { fileURLToPath } from 'node:url';
import { designOf, loadSite, takenAs } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import { answerAround } from '../common-answer.fixture.js';
import { figure } from '../words/figures.js';
import { lossChain } from './sections/losses.js';
import { compareHtml, yearHtml } from './sheet/on-demand.js';

const siteFile = fileURLToPath(new URL('../../../../examples/kettle-pond.yaml', import.meta.url));
const site = loadSite(siteFile);
const year = simulateSite(site.base);
const fixed = simulateSite(designOf(site, 'fixed'));
const { ledger, summary } = year;
const text = await yearHtml(year, 'metric');
const designs = [
  { name: 'base', result: year },
  { name: 'fixed', result: fixed },
];
const comparison = await compareHtml(designs, answerAround(designs), 'metric');

const parsed = (page: string) => parseHTML(page).document;
const report = parsed(text);
const numbers = (root: ReturnType<typeof parsed>, selector: string, name: string) =>
  [...root.querySelectorAll(selector)].map((element) => Number(element.getAttribute(`data-${name}`)));

/** Month of an hour by the calendar of the language, not by ours; 2025 has no leap day. */
const monthOfHour = (h: number) => new Date(Date.UTC(2025, 0, 1, h)).getUTCMonth();
function monthSums(...columns: Float64Array[]): number[] {
  const sums = new Array<number>(12).fill(0);
  for (const column of columns) for (let h = 0; h < 8760; h++) sums[monthOfHour(h)]! += column[h]! / 1000;
  return sums;
}
const ofDay = (column: Float64Array, day: number) => Array.from(column.subarray(day * 24, day * 24 + 24));
/** Drawn figures carry nine digits. */
function expectClose(drawn: readonly number[], counted: readonly number[]): void {
  expect(drawn.length).toBe(counted.length);
  for (const [i, value] of drawn.entries()) {
    expect(Math.abs(value - counted[i]!)).toBeLessThanOrEqual(1e-8 * Math.max(1, Math.abs(counted[i]!)));
  }
}

describe('figures in the charts are those of the ledger', () => {
  test('energy by month', () => {
    const chart = '#energy-chart .wide';
    const layer = (name: string) => {
      const bars = new Array<number>(12).fill(0);
      for (const bar of report.querySelectorAll(`${chart} [data-${name}]`)) {
        bars[Number(bar.getAttribute('data-month')) - 1] = Number(bar.getAttribute(`data-${name}`));
      }
      return bars;
    };
    expectClose(layer('used'), monthSums(ledger.arrayUsedWh));
    expectClose(layer('thrown'), monthSums(ledger.throttledWh));
    expectClose(layer('engine'), monthSums(ledger.generatorWh));
    expectClose(layer('load'), monthSums(year.load.acW, year.load.dcW));
    expect(layer('used').reduce((sum, kWh) => sum + kWh)).toBeGreaterThan(100);
  });

  test('state of charge by day', () => {
    for (const size of ['.wide', '.narrow']) {
      const line = report.querySelector(`#charge-chart ${size} [data-lowest]`)!;
      const lowest = line.getAttribute('data-lowest')!.split(' ').map(Number);
      expectClose(
        lowest,
        Array.from({ length: 365 }, (_, day) => Math.min(...ofDay(ledger.lowestStateOfCharge, day))),
      );
      const noon = numbers(report, `#charge-chart ${size} [data-noon]`, 'noon');
      expectClose(
        noon,
        Array.from({ length: 365 }, (_, day) => ofDay(ledger.stateOfCharge, day)[11]!),
      );
    }
  });

  test('engine hours by day', () => {
    const hours = numbers(report, '#engine-days-chart .wide [data-hours]', 'hours');
    const days = numbers(report, '#engine-days-chart .wide [data-hours]', 'day');
    expect(hours.length).toBeGreaterThan(5);
    expectClose(
      hours,
      days.map((day) => ofDay(ledger.generatorH, day).reduce((sum, h) => sum + h)),
    );
    expect(hours.reduce((sum, h) => sum + h)).toBeCloseTo(summary.generator.hours, 6);
  });

  test('throttling hours, month by month', () => {
    const drawn = new Array<number>(12).fill(0);
    for (const cell of report.querySelectorAll('#throttle-chart .narrow [data-share]')) {
      drawn[Number(cell.getAttribute('data-month')) - 1]! += Number(cell.getAttribute('data-share'));
    }
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    const total = drawn.reduce((sum, share, month) => sum + share * days[month]!, 0);
    expect(total).toBeCloseTo(summary.throttle.hours, 6);
    expect(total).toBeGreaterThan(100);
  });

  test('engine hours by week', () => {
    const weeks = numbers(report, '#engine-weeks-chart .wide [data-hours]', 'week');
    const hours = numbers(report, '#engine-weeks-chart .wide [data-hours]', 'hours');
    expectClose(
      hours,
      weeks.map((week) => {
        const [from, to] = [(week - 1) * 168, week === 52 ? 8760 : week * 168];
        return ledger.generatorH.subarray(from, to).reduce((sum, h) => sum + h, 0);
      }),
    );
    expect(hours.reduce((sum, h) => sum + h)).toBeCloseTo(summary.generator.hours, 6);
  });

  test('temperature by day', () => {
    const bank = report.querySelector('#temperature-chart .wide [data-bank]')!.getAttribute('data-bank')!;
    expectClose(
      bank.split(' ').map(Number),
      Array.from({ length: 365 }, (_, day) => Math.min(...ofDay(ledger.bankC, day))),
    );
    expectClose(
      numbers(report, '#temperature-chart .wide [data-air-highest]', 'air-highest'),
      Array.from({ length: 365 }, (_, day) => Math.max(...ofDay(year.weather.airC, day))),
    );
  });

  test('engine hours and array energy of every design', () => {
    const page = parsed(comparison);
    for (const { name, result } of designs) {
      const bars = (id: string) =>
        numbers(page, `[aria-labelledby="${id}"] [data-design="${name}"] [data-value]`, 'value');
      expectClose(bars('engine'), monthSums(result.ledger.generatorH.map((h) => h * 1000)));
      expectClose(bars('offered'), monthSums(result.ledger.arrayAvailableWh));
    }
    const base = numbers(page, '[aria-labelledby="offered"] [data-design="fixed"] [data-base]', 'base');
    expectClose(base, monthSums(ledger.arrayAvailableWh));
  });

  test('every drawn position is a number', () => {
    for (const page of [text, comparison]) expect(page).not.toMatch(/NaN|Infinity|undefined/);
  });
});

test('the answer is the first thing after the title', () => {
  const answer = report.querySelector('main > p.answer')!.textContent!;
  expect(answer).toContain(`the generator runs ${figure(summary.generator.hours)}`);
  expect(report.querySelector('main')!.firstElementChild!.className).toBe('answer');
});

test('the table of months adds up to the year', () => {
  const rows = [...report.querySelectorAll('[aria-labelledby="months"] tbody tr')].map((row) =>
    [...row.children].map(({ textContent }) => textContent!),
  );
  expect(rows.length).toBe(13);
  for (const column of [1, 2, 3, 4, 6]) {
    const months = rows.slice(0, 12).map((row) => (row[column] === '–' ? 0 : Number(row[column])));
    const total = Number(rows[12]![column]!.replace(' ', ''));
    // Twelve figures rounded to whole units.
    expect(Math.abs(months.reduce((sum, value) => sum + value) - total)).toBeLessThanOrEqual(6);
  }
  expect(rows[12]![3]).toBe(figure(summary.array.usedKWh, 0));
});

test('the chain of losses leads from the light to what the ledger says was used', () => {
  const chain = lossChain(year)!;
  const lost = chain.losses.reduce((sum, { kWh }) => sum + kWh, 0);
  expect(chain.startKWh - lost).toBeCloseTo(summary.array.usedKWh, 6);
  expect(chain.startKWh).toBeCloseTo(summary.array.ratedKW * summary.array.planeKWhPerM2, -1);
});

test('names from the site file stay text', async () => {
  const evil = '<script>alert(1)</script>"\'&';
  const renamed = {
    ...year,
    site: { ...year.site, name: evil },
    summary: {
      ...summary,
      weather: { ...summary.weather, source: evil },
      cautions: [{ code: evil, text: evil }],
    },
  };
  const evilDesigns = [
    { name: evil, result: renamed },
    { name: `${evil}2`, result: fixed },
  ];
  const pages = [
    await yearHtml(renamed, 'metric', { variant: evil }),
    await compareHtml(evilDesigns, answerAround(evilDesigns), 'metric'),
  ];
  for (const page of pages) {
    expect(page).not.toContain('<script');
    const { documentElement } = parsed(page);
    expect(documentElement.querySelectorAll('script').length).toBe(0);
    expect(documentElement.querySelector('h1')!.textContent).toContain(evil);
    expect(documentElement.querySelector('.cautions')!.textContent).toContain(evil);
  }
  expect(parsed(pages[1]!).querySelector('.designs h3')!.textContent).toBe(evil);
});

test('nothing in the page points outside it', () => {
  for (const page of [text, comparison]) {
    expect(page).not.toMatch(/\bsrc=|@import|https?:|<script|<iframe|\bon[a-z]+="/);
    for (const [, target] of page.matchAll(/url\(([^)]*)\)/g)) {
      expect(page).toContain(`id="${target!.slice(1)}"`);
    }
  }
});

test('charts, tables and headings say what they are to those who do not see them', () => {
  for (const page of [report, parsed(comparison)]) {
    for (const svg of page.querySelectorAll('svg.chart')) {
      expect(svg.getAttribute('role')).toBe('img');
      expect(svg.getAttribute('aria-label')!.length).toBeGreaterThan(20);
    }
    for (const table of page.querySelectorAll('table')) {
      expect(table.querySelector('caption')!.textContent).not.toBe('');
      for (const row of table.querySelectorAll('tbody tr')) {
        expect(row.firstElementChild!.getAttribute('scope')).toBe('row');
      }
      const columns = table.querySelectorAll('thead th[scope="col"]').length;
      expect(table.querySelector('tbody tr')!.children.length).toBe(columns);
    }
    for (const drawing of page.querySelectorAll('figure')) expect(drawing.querySelector('figcaption')).not.toBeNull();
    const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  }
  // Every chart of a year has its figures as a table: its own, the one below it, or that of the months.
  expect(report.querySelectorAll('figure details table').length).toBe(4);
});

test('United States customary units are used throughout when asked for', async () => {
  const page = parsed(await yearHtml(year, 'us'));
  const words = page.querySelector('main')!.textContent!;
  expect(words).toContain('degF');
  expect(words).not.toContain('degC');
  const fuel = page.querySelector('[aria-labelledby="months"] tr.sum')!.children[9]!.textContent;
  expect(fuel).toBe(figure(summary.generator.fuelLitres / 3.785411784));
});

test('the parts and the loads are those of the site file, and the loads add up to what the year was asked for', () => {
  const parts = report.querySelector('[aria-labelledby="system"]')!.textContent!;
  expect(parts).toContain('6 modules of 300 W, 1.8 kW: 3 strings of 2 in series');
  expect(parts).toContain('68° from 1 October, 35° from 1 April');
  expect(parts).toContain('flooded lead-acid, 24 V, 1000 Ah at 20 h (24 kWh), used down to 30 %');
  expect(parts).toContain("starts below 45 % between 8 and 20 o'clock; stops above 80 %");
  const rows = [...report.querySelectorAll('[aria-labelledby="system"] table')].at(-1)!.querySelectorAll('tbody tr');
  const whADay = [...rows].map((row) => Number(row.children[2]!.textContent!.replace(' ', '')));
  const all = whADay.pop()!;
  expect(whADay.length).toBe(site.base.loads.length);
  expect(Math.abs(whADay.reduce((sum, wh) => sum + wh) - all)).toBeLessThanOrEqual(whADay.length / 2);
  expect(all).toBe(Math.round(((summary.load.acKWh + summary.load.dcKWh) * 1000) / 365));
});

test('usual, bad and this year stand side by side, as the common years have them', async () => {
  const common = answerAround(designs.slice(0, 1));
  const page = parsed(await yearHtml(year, 'metric', { common, written: { from: 'a.yaml', on: '3 May 2031' } }));
  expect(page.querySelector('header')!.textContent).toContain('Written on 3 May 2031 from a.yaml');
  const row = page.querySelector('[aria-labelledby="outcome"] tbody tr')!;
  const { usual, oneInTen, worst } = common.designs[0]!.ranked.generatorHours;
  expect([...row.children].map(({ textContent }) => textContent)).toEqual([
    'Engine, h',
    figure(usual.value),
    figure(oneInTen.value),
    figure(worst),
    figure(summary.generator.hours),
  ]);
});

test('each design stands with what it changes, what that brings and how it stands to the others', () => {
  const rows = [...parsed(comparison).querySelectorAll('[aria-labelledby="choice"] tbody tr')].map((row) =>
    [...row.children].map(({ textContent }) => textContent!),
  );
  const answer = answerAround(designs);
  expect(rows.length).toBe(designs.length);
  expect(rows[0]![1]).toBe('the base');
  expect(rows[1]![1]).toBe('mount of garden pole: fixed at 60°, facing south, 4 m up');
  const [best] = answer.leaders;
  expect(answer.leaders.length).toBe(1);
  expect(rows.map((row) => row.at(-1))).toEqual(
    designs.map(({ name }) => (name === best ? 'best' : `beyond chance worse than "${best}"`)),
  );
});

test('the safety notice closes every report', () => {
  for (const page of [report, parsed(comparison)]) {
    expect(page.querySelector('main')!.lastElementChild!.textContent).toContain('carbon monoxide');
  }
});

test('a place without array, engine and lead still gets a whole report', async () => {
  const { generator: _, ...bare } = site.base;
  const dark = simulateSite({
    ...bare,
    arrays: [],
    bank: { ...bare.bank, chemistry: 'lithium-iron-phosphate', floor: 0.1 },
  });
  const page = await yearHtml(dark, 'metric');
  expect(page).not.toMatch(/NaN|Infinity|undefined/);
  const document = parsed(page);
  expect(document.querySelector('[aria-labelledby="throttle"]')!.textContent).toContain('Never');
  expect(document.querySelector('#engine-days-chart')).toBeNull();
  expect(document.querySelector('[aria-labelledby="losses"]')).toBeNull();
  expect(document.querySelector('#temperature-chart .key')!.textContent).toContain('no charge below');
});

test('the same year gives the same page, to the last letter', async () => {
  expect((await yearHtml(year, 'metric')) === text).toBe(true);
});

test('what the year assumes is listed whole, with the keys to write and the sources', () => {
  const rows = [...report.querySelectorAll('section[aria-labelledby="taken-as"] tbody tr')];
  const texts = rows.map((row) => [...row.children].map((cell) => cell.textContent));
  expect(texts).toEqual(
    takenAs(year.site).map(({ key, value, text, source }) => [text, value === null ? key : `${key}: ${value}`, source]),
  );
  expect(texts.length).toBeGreaterThan(3);
});
