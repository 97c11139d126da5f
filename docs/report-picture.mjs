// Draws docs/guide/report.png: the report of the honey house's year as a browser shows it. After a build, with chromium.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const root = fileURLToPath(new URL('../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'wintergap-picture-'));
const report = join(folder, 'year.html');
try {
  const site = join(root, 'examples/kettle-pond.yaml');
  execFileSync(join(root, 'node_modules/.bin/wintergap'), ['year', site, '--html', report], { stdio: 'ignore' });
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] });
  const page = await browser.newPage({ viewport: { width: 900, height: 1150 } });
  await page.goto(pathToFileURL(report).href);
  await page.screenshot({ path: join(root, 'docs/guide/report.png') });
  await browser.close();
} finally {
  rmSync(folder, { recursive: true });
}
