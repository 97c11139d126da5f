import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { figure } from '@wintergap/report/in-page';
import { parseSite } from '@wintergap/site';
import { commonAnswer, runDesigns } from '@wintergap/study';
import { PreparedCache, simulateSite } from '@wintergap/year';
import type { Browser, BrowserContextOptions, CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { program } from '../built-program.js';
import { browserPath, desk, launchBrowser, objectionsTo, phone } from './chromium.js';

if (!browserPath) console.info('no chromium under /usr/bin: the live page is not opened in a browser');

const root = join(import.meta.dirname, '..', '..');
const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
/** Common years in these tests: few, since each is run here and there. */
const years = 3;
/** Random moves against the library; 50 and more by hand. */
const moves = Number(process.env.LIVE_MOVES ?? 4);
/** Drags after which memory is looked at; 500 by hand. */
const drags = Number(process.env.LIVE_DRAGS ?? 40);

interface Opened {
  page: Page;
  asked: string[];
  said: string[];
}

describe.skipIf(!browserPath)('the live page in a browser', () => {
  let browser: Browser;
  let folder = '';
  let siteFile = '';
  let server: ChildProcess;
  let address = '';
  let shared: Opened;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'wintergap-live-page-'));
    mkdirSync(join(folder, 'data-demo'));
    mkdirSync(join(folder, 'sites'));
    writeFileSync(
      join(folder, 'data-demo/kettle-pond.csv'),
      readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8'),
    );
    siteFile = join(folder, 'sites/place.yaml');
    writeFileSync(siteFile, example);
    server = spawn(process.execPath, [program, 'live', siteFile, '--years', String(years)]);
    address = await new Promise<string>((resolve, reject) => {
      server.stdout!.once('data', (text) => resolve(String(text).split('\n')[0]!));
      server.stderr!.once('data', (text) => reject(new Error(String(text))));
    });
    browser = await launchBrowser();
    shared = await open(address);
  });

  afterAll(async () => {
    server?.kill();
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  /** Opened once for many tests: the address of the server, on a desk, in light colours. */
  async function sharedPage(): Promise<Opened> {
    const { page, said } = shared;
    said.length = 0;
    await page.emulateMedia({ media: 'screen', colorScheme: 'light', reducedMotion: 'no-preference' });
    await page.setViewportSize(desk);
    for (const unpin of (await page.getByRole('button', { name: 'Unpin' }).all()).reverse()) await unpin.click();
    const back = page.getByRole('button', { name: 'Back to the site file' });
    if (await back.isEnabled()) await back.click();
    await page.evaluate('scrollTo(0, 0)');
    await settled(page);
    return shared;
  }

  async function open(url: string, options: BrowserContextOptions = { viewport: desk }): Promise<Opened> {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    const asked: string[] = [];
    const said: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    page.on('console', (message) => said.push(message.text()));
    page.on('pageerror', (error) => said.push(error.message));
    await page.goto(url);
    await settled(page);
    return { page, asked, said };
  }

  const settled = (page: Page) => page.locator('.answer:not(.settling)').waitFor({ timeout: 120_000 });

  const control = (page: Page, id: string) => page.locator(`[data-control="${id}"]`);

  /** Puts a slider, as a drag does. */
  async function drag(page: Page, id: string, value: number): Promise<void> {
    await control(page, id).fill(String(value));
    await settled(page);
  }

  /** Figures as they are shown: a browser's powers differ from those of Node.js in the last bit, far behind these digits. */
  async function figuresOf(page: Page) {
    const ids = ['usual', 'one-in-ten', 'own-hours', 'fuel', 'thrown', 'lowest', 'dark'] as const;
    const shown = await Promise.all(ids.map(async (id) => [id, await page.locator(`#${id}`).textContent()]));
    return Object.fromEntries(shown) as Record<(typeof ids)[number], string>;
  }

  /** Saves the present set-up under a name, as the reader would. */
  async function saved(page: Page, name: string): Promise<string> {
    await page.getByLabel('Name of this set-up').fill(name);
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#save').click()]);
    return readFileSync(await download.path(), 'utf8');
  }

  const json = (file: string, ...options: string[]) => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [program, 'year', file, '--json', '--years', String(years), ...options],
      { encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([0, '']);
    return JSON.parse(stdout);
  };

  const figuresOfJson = ({ common, generator, throttle, bank, load }: ReturnType<typeof json>) => ({
    usual: figure(common.ranked.generatorHours.usual.value),
    'one-in-ten': figure(common.ranked.generatorHours.oneInTen.value),
    'own-hours': figure(generator.hours),
    fuel: figure(common.fuelLitres.mean),
    thrown: figure(throttle.kWh),
    lowest: figure(bank.minStateOfCharge * 100, 0),
    dark: figure(load.darkKWh),
  });

  test('it opens with the figures of the program, says nothing, and asks nobody but its own server', async () => {
    const { page, asked, said } = shared;
    expect(said).toEqual([]);
    const { origin } = new URL(address);
    expect(asked.filter((url) => !url.startsWith(origin) && !/^(data|blob):/.test(url))).toEqual([]);
    expect(asked.filter((url) => url.startsWith(origin))).toEqual([address]);
    expect(await figuresOf(page)).toEqual(figuresOfJson(json(siteFile)));
  });

  test('a drag changes the figures; saved beside the original the program says the same, to the last digit', async () => {
    const { page, said } = await sharedPage();
    const before = await figuresOf(page);
    await drag(page, 'garden pole strings', 2);
    await control(page, 'garden pole mount').selectOption('fixed');
    await drag(page, 'garden pole tilt 0', 61);
    await drag(page, 'capacity', 850);
    await control(page, 'load washing').click();
    await settled(page);
    const after = await figuresOf(page);
    expect(after.usual).not.toBe(before.usual);
    await page.getByLabel('Name of this set-up').fill('two strings, "fixed"');
    await page.locator('#save-beside').click();
    await page.getByText('Written: place two-strings-fixed.yaml').waitFor();
    const written = join(folder, 'sites/place two-strings-fixed.yaml');
    expect(figuresOfJson(json(written, '--variant', 'two strings, "fixed"'))).toEqual(after);
    expect(readFileSync(siteFile, 'utf8')).toBe(example);
    // A second time the file is there.
    await page.locator('#save-beside').click();
    await page.getByText('Not written: there is a file').waitFor();
    expect(said.filter((line) => !/400/.test(line))).toEqual([]);
  });

  test('wherever controls are put at random, the figures are those of the library', async () => {
    const { page } = await sharedPage();
    let seed = Number(process.env.FAST_CHECK_SEED ?? 5);
    const chance = () => {
      seed = (seed * 1103515245 + 12345) % 2 ** 31;
      return seed / 2 ** 31;
    };
    const prepared = new PreparedCache();
    let compared = 0;
    for (let move = 0; move < moves; move++) {
      const all = await page.locator('[data-control]').all();
      const one = all[Math.floor(chance() * all.length)]!;
      const kind = await one.evaluate((element) => (element as unknown as { type: string }).type);
      if (kind === 'checkbox') await one.click();
      else if (kind === 'range') {
        const [min, max, step] = await Promise.all(
          ['min', 'max', 'step'].map(async (name) => Number(await one.getAttribute(name))),
        );
        const steps = Math.floor((max! - min!) / step!);
        await one.fill(String(Number((min! + Math.floor(chance() * (steps + 1)) * step!).toFixed(4))));
      } else {
        const options = await one.locator('option').all();
        await one.selectOption({ index: Math.floor(chance() * options.length) });
      }
      await page.waitForTimeout(50);
      if ((await page.locator('.refused').count()) > 0) {
        await page.getByRole('button', { name: 'Back to the site file' }).click();
        await settled(page);
        continue;
      }
      await settled(page);
      const figures = await figuresOf(page);
      if (await page.getByRole('button', { name: 'Back to the site file' }).isDisabled()) continue;
      const site = parseSite(await saved(page, 'moved'), siteFile);
      const design = site.variants.get('moved')!;
      const { summary } = simulateSite(design, prepared);
      const { designs } = commonAnswer(await runDesigns([{ name: 'moved', site: design }], { years, workers: 1 }));
      expect(figures.usual).toBe(figure(designs[0]!.ranked.generatorHours.usual.value));
      expect(figures['one-in-ten']).toBe(figure(designs[0]!.ranked.generatorHours.oneInTen.value));
      expect(figures['own-hours']).toBe(figure(summary.generator.hours));
      expect(figures.thrown).toBe(figure(summary.throttle.kWh));
      compared++;
    }
    expect(compared).toBeGreaterThan(moves / 4);
  });

  test('a pinned set-up stays beside the present one, with the difference that compare prints', async () => {
    const { page } = await sharedPage();
    await drag(page, 'capacity', 600);
    await page.getByLabel('Name of this set-up').fill('<b>small</b>');
    await page.getByRole('button', { name: 'Pin it' }).click();
    await drag(page, 'garden pole height', 9);
    const rows = page.locator('table.pins tbody tr');
    expect(await rows.locator('th').allTextContents()).toEqual(['base', '<b>small</b>', 'present']);
    const site = parseSite(await saved(page, 'high'), siteFile);
    const answer = commonAnswer(
      await runDesigns(
        [
          { name: 'base', site: site.base },
          { name: 'high', site: site.variants.get('high')! },
        ],
        { years, workers: 1 },
      ),
    );
    const { lessIn, equalIn } = answer.designs[1]!.againstBase!.generatorHours;
    const said = (await rows.nth(2).locator('td.words').textContent())!;
    const more = years - lessIn - equalIn;
    expect(said).toMatch(
      new RegExp(`in (${lessIn}|${more}) of ${years} years|no difference that ${years} years can show`),
    );
    await rows.nth(1).getByRole('button', { name: 'Hold against' }).click();
    await page.getByText('Against <b>small</b>').waitFor();
    await rows.nth(1).getByRole('button', { name: 'Show base' }).click();
    await settled(page);
    expect(await control(page, 'capacity').inputValue()).toBe('1000');
  });

  test('names of a site file are shown as text, and nothing in it runs', async () => {
    const evil = '</script><img src=x onerror=alert(1)>';
    const text = example
      .replace('name: Kettle Pond honey house', `name: "${evil}"`)
      .replaceAll('garden pole', `"${evil}"`)
      .replace('name: freezer,', `name: "${evil}",`);
    const file = join(folder, 'sites/evil.yaml');
    writeFileSync(file, text);
    const html = join(folder, 'evil.html');
    const { status, stderr } = spawnSync(
      process.execPath,
      [program, 'live', file, '--html-live', html, '--years', '1'],
      {
        encoding: 'utf8',
      },
    );
    expect([status, stderr]).toEqual([0, '']);
    const { page, said } = await open(pathToFileURL(html).href);
    expect(said).toEqual([]);
    expect(await page.locator('h1').textContent()).toBe(evil);
    expect(await page.locator('legend').first().textContent()).toBe(`Array ${evil}`);
    expect(await page.locator('img').count()).toBe(0);
    await page.context().close();
  });

  test('as one file it works from a disk, asks for nothing, and is below 3 MB', async () => {
    const html = join(folder, 'page.html');
    const { status } = spawnSync(process.execPath, [
      program,
      'live',
      siteFile,
      '--html-live',
      html,
      '--years',
      String(years),
    ]);
    expect(status).toBe(0);
    expect(statSync(html).size).toBeLessThan(3e6);
    expect(readFileSync(html, 'utf8')).not.toContain(folder);
    const { page, asked, said } = await open(pathToFileURL(html).href, { viewport: desk, offline: true });
    expect(said).toEqual([]);
    expect(asked.filter((url) => !/^(data|blob):/.test(url))).toEqual([pathToFileURL(html).href]);
    await drag(page, 'capacity', 500);
    expect(await page.locator('#save-beside').count()).toBe(0);
    const text = await saved(page, 'small');
    const file = join(folder, 'sites/small.yaml');
    writeFileSync(file, text);
    expect(figuresOfJson(json(file, '--variant', 'small'))).toEqual(await figuresOf(page));
    await page.context().close();
  });

  test('a day opens under the pointer and under the keys', async () => {
    const { page } = await sharedPage();
    const chart = (await page.locator('.pointed').boundingBox())!;
    await page.mouse.move(chart.x + chart.width * 0.5, chart.y + 40);
    await page.locator('.day[data-day^="06"]').waitFor();
    await page.getByLabel('Day', { exact: true }).focus();
    await page.keyboard.press('Home');
    expect(await page.locator('.day h3').textContent()).toBe('1 January');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.day h3').textContent()).toBe('2 January');
    await page.getByRole('button', { name: 'Dullest fortnight' }).click();
    expect(await page.locator('#fortnight tbody tr').count()).toBeGreaterThanOrEqual(14);
  });

  const looks = [
    { look: 'desk, light', viewport: desk, colorScheme: 'light' },
    { look: 'desk, dark', viewport: desk, colorScheme: 'dark' },
    { look: 'phone', viewport: phone, colorScheme: 'light' },
  ] as const;
  test.each(looks)(
    '$look: nothing that axe objects to, nothing that scrolls sideways, every control named',
    async ({ viewport, colorScheme }) => {
      const { page } = await sharedPage();
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme });
      await drag(page, 'capacity', 800);
      expect(await objectionsTo(page)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(viewport.width);
      for (const slider of await page.getByRole('slider').all()) {
        expect(await slider.getAttribute('aria-valuetext')).toMatch(/\S/);
      }
    },
  );

  test('the answer is heard once things are at rest, and the page prints what is set', async () => {
    const { page } = await sharedPage();
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await drag(page, 'capacity', 800);
    await page.locator('.results [role=status]', { hasText: 'generator runs' }).first().waitFor({ state: 'attached' });
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    await page.emulateMedia({ media: 'print' });
    expect(await control(page, 'capacity').isVisible()).toBe(false);
    expect(await page.getByText('800 Ah at 24 V').isVisible()).toBe(true);
  });

  test('after a move the line through the year is the one of the new design: its lowest point is the lowest charge', async () => {
    const { page } = await sharedPage();
    const course = () => page.locator('.pointed svg').first().locator('path[stroke="var(--charge)"]').getAttribute('d');
    const before = await course();
    await drag(page, 'capacity', 600);
    const after = (await course())!;
    expect(after).not.toBe(before);
    // From 0 % at the foot to 100 % at the top, in the units of the drawing.
    const [top, foot] = [12, 250];
    const lowest = Math.max(...[...after.matchAll(/,([\d.]+)/g)].map(([, y]) => Number(y)));
    expect(String(Math.round((100 * (foot - lowest)) / (foot - top)))).toBe(
      await page.locator('#lowest').textContent(),
    );
    expect(after.match(/,/g)).toHaveLength(365);
  });

  test('a design that cannot be run says why, the others keep their years, and the next move goes on', async () => {
    const { page } = await sharedPage();
    const before = await figuresOf(page);
    await control(page, 'start').fill('90');
    await page.locator('.answer.not-run').waitFor();
    await page.getByText('This design cannot be run.').waitFor();
    expect(await control(page, 'start').inputValue()).toBe('90');
    const rows = page.locator('table.pins tbody tr');
    expect(await rows.locator('th').allTextContents()).toEqual(['base']);
    expect(await rows.first().locator('td').first().textContent()).toBe(before.usual);
    await drag(page, 'start', 45);
    expect(await page.locator('.refused').count()).toBe(0);
    expect(await figuresOf(page)).toEqual(before);
  });

  test('moves that follow one another before common years are through leave the figures of the last', async () => {
    const { page } = await sharedPage();
    for (const height of [5, 6, 7, 8]) {
      await control(page, 'garden pole height').fill(String(height));
      // About as long as a year takes to be drawn: common years of each height are begun, and dropped at the next.
      await page.waitForTimeout(40);
    }
    await settled(page);
    const figures = await figuresOf(page);
    const text = await saved(page, 'high');
    writeFileSync(join(folder, 'sites/high.yaml'), text);
    expect(figuresOfJson(json(join(folder, 'sites/high.yaml'), '--variant', 'high'))).toEqual(figures);
  });

  test('memory of the page and of its workers stays where it is however long one drags', async () => {
    const { page } = await sharedPage();
    const usedMB = await memoryOf(await page.context().newCDPSession(page));
    const dragAll = async (times: number) => {
      for (let n = 0; n < times; n++) await control(page, 'capacity').fill(String(500 + (n % 20) * 25));
      await settled(page);
      return usedMB();
    };
    // Once through all places, so that what is kept of each is there.
    const before = await dragAll(20);
    expect(before).toHaveLength(3);
    const after = await dragAll(drags);
    if (process.env.LIVE_DRAGS) console.info(`MB before and after ${drags} drags, page and workers:`, before, after);
    for (const [i, mb] of after.entries()) expect(mb - before[i]!).toBeLessThan(4);
    expect(readdirSync(join(folder, 'sites')).filter((name) => name.includes('partial'))).toEqual([]);
  });
});

/** Asks a page for what it and each of its workers hold once rubbish is collected: heap and buffers, MB. */
async function memoryOf(devtools: CDPSession): Promise<() => Promise<number[]>> {
  const workers: string[] = [];
  const waiting = new Map<number, (result: unknown) => void>();
  devtools.on('Target.attachedToTarget', ({ sessionId }) => workers.push(sessionId));
  devtools.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message);
    waiting.get(id)?.(result);
  });
  await devtools.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  let asked = 0;
  const ofWorker = (sessionId: string) => (method: Method) =>
    new Promise((resolve) => {
      waiting.set(++asked, resolve);
      void devtools.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id: asked, method }) });
    });
  const places = [(method: Method): Promise<unknown> => devtools.send(method), ...workers.map(ofWorker)];
  return () =>
    Promise.all(
      places.map(async (ask) => {
        await ask('HeapProfiler.collectGarbage');
        const used = (await ask('Runtime.getHeapUsage')) as { usedSize: number; backingStorageSize: number };
        return (used.usedSize + used.backingStorageSize) / 1e6;
      }),
    );
}

type Method = 'HeapProfiler.collectGarbage' | 'Runtime.getHeapUsage';
