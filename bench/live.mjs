// The live page in a real browser: how long after a move its year is drawn.
//
//   node bench/live.mjs [SITE]     the same alone, of another place than that of the bench
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { median, once } from './measure.mjs';
import { root, scratch, siteFile } from './place.mjs';

const executablePath = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(existsSync);
const program = [process.execPath, join(root, 'packages/cli/bin/wintergap.js')];

/** Places of a slider to which it is moved, one after the other, as shares of its way. */
const ways = [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65];
/** Between a drawn year and the next move while common years run, ms: they are then always under way. */
const handMs = 150;

/** Kinds of moves, and the names of the controls that make them. */
const kinds = [
  ['mount of another kind', / mount$/],
  ['tilt', / (tilt \d|axis)$/],
  ['way it faces', / facing$/],
  ['strings', / strings$/],
  ['height', / height$/],
  ['bank', /^capacity$/],
  ['cabinet', /^(foam|insulation)$/],
  ['when the engine starts and stops', /^(start|start-by-hand|stop)$/],
  ['inverter', /^idle$/],
  ['snow', /^sweeping/],
  ['loads', /^load /],
];

/** Median and worst of each kind of move, as rows of a table. */
export async function liveMoves(site = siteFile) {
  if (!executablePath) return ['No chromium under /usr/bin: not measured.'];
  const browser = await chromium.launch({ executablePath, args: ['--headless', '--no-sandbox', '--disable-gpu'] });
  try {
    const rest = await movesOf(browser, site, 3, 'settled');
    const busy = await movesOf(browser, site, 100, 'under way');
    const all = (moves) => [...moves.values()].flat();
    const names = [...rest.keys()];
    return [
      '| move | years at rest: median | worst | of it in the worker | shown after | common years under way: median | worst |',
      '| --- | --: | --: | --: | --: | --: | --: |',
      ...names.map((name) => rowOf(name, rest.get(name), busy.get(name) ?? [])),
      rowOf('all', all(rest), all(busy)),
      '',
      `Milliseconds from the move to the finished drawing, and to the end of the frame that shows it; chromium ${browser.version()}.`,
    ];
  } finally {
    await browser.close();
  }
}

function rowOf(name, rest, busy) {
  // None where no move of the kind was drawn by itself, such as of a control that the one before had taken away.
  const middle = (moves, figure) => (moves.length > 0 ? median(moves.map((move) => move[figure])).toFixed(0) : '-');
  const worst = (moves) => (moves.length > 0 ? Math.max(...moves.map(({ drawnMs }) => drawnMs)).toFixed(0) : '-');
  const cells = [middle(rest, 'drawnMs'), worst(rest), middle(rest, 'yearMs'), middle(rest, 'shownMs')];
  return `| ${[name, ...cells, middle(busy, 'drawnMs'), worst(busy)].join(' | ')} |`;
}

/** Times of all moves, by their kind. */
async function movesOf(browser, site, years, common) {
  const file = scratch(`live-${years}.html`);
  once([...program, 'live', site, '--html-live', file, '--years', String(years)]);
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.addInitScript(noteRedraws);
  await page.goto(pathToFileURL(file).href);
  const settled = () => page.locator('.answer:not(.settling)').waitFor({ timeout: 120_000 });
  await settled();
  const byKind = new Map();
  for (const [kind, ids] of kinds) {
    const moves = [];
    for (const id of await controlsOf(page, ids)) {
      for (const move of await movesOfControl(page, id)) {
        const time = await timeOf(page, move);
        if (time !== null) moves.push(time);
        if (common === 'under way') await page.waitForTimeout(handMs);
        else if (time !== null) await settled();
      }
      await backToSiteFile(page);
      if (common === 'settled') await settled();
    }
    if (moves.length > 0) byKind.set(kind, moves);
  }
  await page.close();
  return byKind;
}

/** Keeps what the page notes of its redraws; runs in the page. */
function noteRedraws() {
  globalThis.redraws = [];
  globalThis.shown = [];
  new PerformanceObserver((list) => {
    for (const { name, duration, detail } of list.getEntries()) {
      if (name === 'redraw') globalThis.redraws.push({ drawnMs: duration, yearMs: detail.yearMs });
      if (name === 'redraw shown') globalThis.shown.push(duration);
    }
  }).observe({ type: 'measure' });
}

const controlsOf = async (page, ids) => {
  const all = await page.locator('[data-control]').evaluateAll((inputs) => inputs.map((one) => one.dataset.control));
  return all.filter((id) => ids.test(id)).slice(0, 4);
};

/** Moves of one control, each to be made once the one before is drawn. */
async function movesOfControl(page, id) {
  const control = page.locator(`[data-control="${id}"]`);
  const kind = await control.evaluate((input) => input.type);
  if (kind === 'checkbox') return ways.map(() => () => control.click());
  if (kind !== 'range') {
    const values = await control.locator('option').evaluateAll((options) => options.map(({ value }) => value));
    return [...values.slice(1), ...values].map((value) => () => control.selectOption(value));
  }
  const [min, max, step] = await control.evaluate((input) => [input.min, input.max, input.step].map(Number));
  return ways.map((way) => {
    const value = min + Math.round((way * (max - min)) / step) * step;
    return () => control.fill(String(Number(value.toFixed(4))));
  });
}

/** Makes a move; `null` where the design of it cannot be run. */
async function timeOf(page, move) {
  const noted = () => page.evaluate(() => Math.min(globalThis.redraws.length, globalThis.shown.length));
  const before = await noted();
  await move();
  for (let waited = 0; (await noted()) === before; waited++) {
    // To choose what is chosen already is no move.
    if (waited > 100) return null;
    await page.waitForTimeout(20);
  }
  if ((await page.locator('.answer.not-run').count()) > 0) return null;
  return page.evaluate(() => ({ ...globalThis.redraws.at(-1), shownMs: globalThis.shown.at(-1) }));
}

async function backToSiteFile(page) {
  const back = page.getByRole('button', { name: 'Back to the site file' });
  if (await back.isEnabled()) await back.click();
}

if (process.argv[1] === import.meta.filename) console.log((await liveMoves(process.argv[2])).join('\n'));
