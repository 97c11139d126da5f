import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';

/** Where a browser for the tests is; `undefined` where there is none. */
export const browserPath: string | undefined = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find(existsSync);

const quiet = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const launchBrowser = (): Promise<Browser> => chromium.launch({ executablePath: browserPath!, args: quiet });

export const phone = { width: 360, height: 740 };
export const desk = { width: 1280, height: 800 };

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe objects to in a page, by WCAG 2.2 A and AA and its own best practices: rule and places. */
export async function objectionsTo(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const { violations } = (await page.evaluate('axe.run()')) as {
    violations: { id: string; nodes: { html: string }[] }[];
  };
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`);
}
