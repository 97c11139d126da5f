import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compareHtml, yearHtml } from '@wintergap/report';
import { loadSite } from '@wintergap/site';
import { PreparedCache, simulateSite } from '@wintergap/year';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerAround } from '../../packages/report/src/common-answer.fixture.js';
import { browserPath, desk, launchBrowser, objectionsTo, phone } from './chromium.js';

if (!browserPath) console.info('no chromium under /usr/bin: the reports are not opened in a browser');

const siteFile = join(import.meta.dirname, '..', '..', 'examples', 'kettle-pond.yaml');
type PageName = 'year' | 'compare';
const names: PageName[] = ['year', 'compare'];

/** Pixels of a style sheet in a millimetre: 96 to the inch. */
const pxPerMm = 96 / 25.4;

/** Runs in the page: text that cannot be told from what it stands on, as WCAG 2.2 counts contrast; 4.5 is asked. */
const faintText = `(() => {
  const numbers = (colour) => colour.match(/[\\d.]+/g).map(Number);
  const light = ([r, g, b]) => [r, g, b].map((c) => c / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
    .reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
  const behind = (element) => {
    for (let at = element; at; at = at.parentElement) {
      const [r, g, b, alpha = 1] = numbers(getComputedStyle(at).backgroundColor);
      if (alpha > 0) return [r, g, b];
    }
    return [255, 255, 255];
  };
  let looked = 0;
  const faint = [];
  for (const element of document.querySelectorAll('body *')) {
    const says = [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== '');
    if (!says || element.closest('#throttle-chart .chart, title') || element.getClientRects().length === 0) continue;
    const style = getComputedStyle(element);
    const front = numbers(element.closest('svg') ? style.fill : style.color);
    const [dim, bright] = [light(front), light(behind(element))].sort((a, b) => a - b);
    looked++;
    if ((bright + 0.05) / (dim + 0.05) < 4.5) faint.push(element.outerHTML.slice(0, 120));
  }
  return { looked, faint };
})()`;

describe.skipIf(!browserPath)('a report in a browser', () => {
  let designCount = 0;
  let folder = '';
  let browser: Browser;

  const fileOf = (name: PageName) => join(folder, `${name}.html`);

  beforeAll(async () => {
    const site = loadSite(siteFile);
    const prepared = new PreparedCache();
    const designs = [['base', site.base] as const, ...site.variants].map(([name, design]) => ({
      name,
      result: simulateSite(design, prepared),
    }));
    designCount = designs.length;
    folder = mkdtempSync(join(tmpdir(), 'wintergap-report-'));
    writeFileSync(fileOf('year'), await yearHtml(designs[0]!.result, 'metric'));
    writeFileSync(fileOf('compare'), await compareHtml(designs, answerAround(designs), 'metric'));
    browser = await launchBrowser();
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Weeks of the engine, state of charge, engine days, throttling, energy, temperature; or two charts for each design. */
  const chartsOf = (name: PageName) => (name === 'year' ? 6 : 2 * designCount);

  /** Opens a report as a reader would, from the disk, and notes what it says and asks for. */
  async function open(
    name: PageName,
    options: BrowserContextOptions,
  ): Promise<{ page: Page; asked: string[]; said: string[] }> {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    const asked: string[] = [];
    const said: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    await page.goto(pathToFileURL(fileOf(name)).href);
    return { page, asked, said };
  }

  test.each(names)('%s: opens from the disk without a word of complaint or a request', async (name) => {
    const { page, asked, said } = await open(name, { viewport: desk });
    expect(said).toEqual([]);
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([pathToFileURL(fileOf(name)).href]);
    const answer = page.locator('p.answer');
    expect(await answer.isVisible()).toBe(true);
    const box = await answer.boundingBox();
    expect(box!.y + box!.height).toBeLessThan(desk.height);
    await page.context().close();
  });

  test.each(names)('%s: the policy in its head stops what a foreign hand might add', async (name) => {
    const { page } = await open(name, { viewport: desk });
    const stopped = await page.evaluate(`new Promise((resolve) => {
      document.addEventListener('securitypolicyviolation', (event) => resolve(event.effectiveDirective));
      document.body.insertAdjacentHTML('beforeend', '<img src="https://example.org/dot.png" alt="">');
      setTimeout(() => resolve('nothing'), 5000);
    })`);
    expect(stopped).toBe('img-src');
    await page.context().close();
  });

  const sizes = [phone, desk].flatMap((size) => names.map((name) => ({ name, size, width: size.width })));
  test.each(sizes)(
    '$name: in a window $width wide nothing scrolls sideways, and charts fit with letters that can be read',
    async ({ name, size }) => {
      const { page } = await open(name, { viewport: size });
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(size.width);
      const charts = await page.locator('svg.chart:visible').all();
      expect(charts.length).toBe(chartsOf(name));
      for (const chart of charts) {
        const box = (await chart.boundingBox())!;
        expect(box.x).toBeGreaterThanOrEqual(0);
        expect(box.x + box.width).toBeLessThanOrEqual(size.width);
        expect(box.width).toBeGreaterThan(200);
        expect(box.height).toBeGreaterThan(50);
      }
      const letters = (await page.evaluate(`[...document.querySelectorAll('svg.chart text')]
      .filter((text) => text.getClientRects().length > 0 && text.textContent !== '')
      .map((text) => {
        const box = text.getBoundingClientRect();
        const frame = text.closest('svg').getBoundingClientRect();
        const scale = frame.width / text.closest('svg').viewBox.baseVal.width;
        return {
          text: text.textContent,
          px: Number.parseFloat(getComputedStyle(text).fontSize) * scale,
          outside: Math.max(frame.left - box.left, box.right - frame.right, frame.top - box.top, box.bottom - frame.bottom),
        };
      })`)) as { text: string; px: number; outside: number }[];
      expect(letters.length).toBeGreaterThan(50);
      for (const { text, px, outside } of letters) {
        expect(px, text).toBeGreaterThan(9.5);
        expect(outside, text).toBeLessThan(1.5);
      }
      await page.context().close();
    },
  );

  test.each(names)('%s: nothing that axe objects to on a phone, where tables go on sideways', async (name) => {
    const { page } = await open(name, { viewport: phone });
    expect(await objectionsTo(page)).toEqual([]);
    await page.context().close();
  });

  test('on a phone a table that goes on sideways shows it by a shade at its edge, and not where it ends', async () => {
    const { page } = await open('year', { viewport: phone });
    const months = page.locator('[aria-labelledby="months"] .scroll');
    await months.scrollIntoViewIfNeeded();
    const box = (await months.boundingBox())!;
    const edge = () =>
      page.screenshot({ clip: { x: box.x + box.width - 4, y: box.y + 2, width: 3, height: 3 } }).then(String);
    const before = await edge();
    await page.evaluate(`document.querySelector('[aria-labelledby="months"] .scroll').scrollTo(1e4, 0)`);
    expect(await edge()).not.toBe(before);
    await page.context().close();
  });

  const schemes = (['light', 'dark'] as const).flatMap((scheme) => names.map((name) => ({ name, scheme })));
  test.each(schemes)('$name: all text stands out from its ground on a $scheme screen', async ({ name, scheme }) => {
    const { page } = await open(name, { viewport: desk, colorScheme: scheme });
    await page.evaluate(`document.querySelectorAll('details').forEach((details) => { details.open = true; })`);
    const { looked, faint } = (await page.evaluate(faintText)) as { looked: number; faint: string[] };
    expect(looked).toBeGreaterThan(200);
    expect(faint).toEqual([]);
    const ground = (await page.evaluate('getComputedStyle(document.body).backgroundColor')) as string;
    const brightness = Math.max(...ground.match(/\d+/g)!.map(Number));
    if (scheme === 'dark') expect(brightness).toBeLessThan(60);
    else expect(brightness).toBeGreaterThan(200);
    await page.context().close();
  });

  test.each(names)('%s: prints on paper, light and with the wide drawings, also from a dark screen', async (name) => {
    const { page } = await open(name, { viewport: phone, colorScheme: 'dark' });
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)!.length;
    expect(sheets).toBeGreaterThanOrEqual(2);
    expect(sheets).toBeLessThanOrEqual(8);
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
    expect(await page.evaluate('getComputedStyle(document.body).backgroundColor')).toBe('rgb(255, 255, 255)');
    if (name === 'year') {
      expect(await page.locator('.narrow:visible').count()).toBe(0);
      expect(await page.locator('.wide:visible').count()).toBe(6);
      // Two charts to a sheet: each with its key and caption takes less than half of an A4's 267 mm between margins.
      await page.setViewportSize({ width: Math.round(180 * pxPerMm), height: Math.round(267 * pxPerMm) });
      for (const figure of await page.locator('figure:visible').all()) {
        expect((await figure.boundingBox())!.height).toBeLessThan((267 / 2) * pxPerMm);
      }
    }
    await page.context().close();
  });

  test.each(schemes)('$name: nothing that axe objects to on a $scheme screen', async ({ name, scheme }) => {
    const { page } = await open(name, { viewport: desk, colorScheme: scheme });
    await page.evaluate(`document.querySelectorAll('details').forEach((details) => { details.open = true; })`);
    expect(await objectionsTo(page)).toEqual([]);
    await page.context().close();
  });

  test.each(names)('%s: can be walked by headings and landmarks', async (name) => {
    const { page } = await open(name, { viewport: desk });
    const levels = (await page.evaluate(
      `[...document.querySelectorAll('h1,h2,h3,h4')].map((heading) => Number(heading.tagName[1]))`,
    )) as number[];
    expect(levels[0]).toBe(1);
    expect(levels.filter((level) => level === 1).length).toBe(1);
    for (let i = 1; i < levels.length; i++) expect(levels[i]! - levels[i - 1]!).toBeLessThanOrEqual(1);
    expect(await page.getByRole('main').count()).toBe(1);
    expect(await page.getByRole('banner').count()).toBe(1);
    expect(await page.getByRole('contentinfo').count()).toBe(1);
    expect(await page.getAttribute('html', 'lang')).toBe('en');
    // Sections are regions named by their headings.
    expect(
      await page
        .getByRole('region', { name: name === 'year' ? 'How full is the bank?' : 'In the year of the file' })
        .count(),
    ).toBe(1);
    const charts = await page.getByRole('img').all();
    expect(charts.length).toBe(chartsOf(name));
    for (const chart of charts) expect((await chart.getAttribute('aria-label'))!.length).toBeGreaterThan(20);
    const table = page.locator(`[aria-labelledby="${name === 'year' ? 'months' : 'designs'}"]`).getByRole('table');
    expect(await table.getByRole('columnheader').count()).toBeGreaterThan(3);
    expect(await table.getByRole('rowheader').count()).toBeGreaterThan(3);
    await page.context().close();
  });

  test('what is folded opens by keyboard, and wide tables scroll by keyboard', async () => {
    const { page } = await open('year', { viewport: phone });
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.tagName')).toBe('SUMMARY');
    await page.keyboard.press('Enter');
    expect(await page.locator('#engine-weeks-chart table').isVisible()).toBe(true);
    const months = page.locator('[aria-labelledby="months"] .scroll');
    await months.focus();
    await page.keyboard.press('ArrowRight');
    // Asked again from here: a page that polls by itself would evaluate text, which its policy forbids.
    await expect.poll(() => months.evaluate(({ scrollLeft }) => scrollLeft)).toBeGreaterThan(0);
    await page.context().close();
  });
});
