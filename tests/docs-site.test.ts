import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../', import.meta.url));
const site = mkdtempSync(join(tmpdir(), 'wintergap-docs-'));
afterAll(() => rmSync(site, { recursive: true }));

test('the docs are written as a site whose links lead to pages that are there, from disk too', () => {
  const eleventy = join(root, 'node_modules/.bin/eleventy');
  execFileSync(eleventy, ['--config=docs/eleventy.config.mjs', '--quiet', `--output=${site}`], { cwd: root });
  const pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
  expect(pages).toEqual(
    expect.arrayContaining(['index.html', 'guide/start.html', 'site-file-keys.html', 'models.html']),
  );
  for (const page of pages) {
    const html = readFileSync(join(site, page), 'utf8');
    for (const [, link] of html.matchAll(/(?:href|src)="([^"#:]+)(?:#[^"]*)?"/g)) {
      expect(existsSync(join(site, dirname(page), link!)), `${page} links ${link}`).toBe(true);
    }
  }
}, 60_000);

test('the reference of the site file names every key of the schema', async () => {
  // @ts-expect-error a plain script without types
  const { siteKeys } = await import('../docs/site-file-keys.mjs');
  const paths: string[] = siteKeys().map(({ path }: { path: string }) => path);
  for (const key of [
    'place.latitude',
    'arrays[].mount.tilts[].tilt',
    'bank.cabinet.insulation.foam',
    'generator.start.below',
  ]) {
    expect(paths).toContain(key);
  }
  expect(new Set(paths).size).toBe(paths.length);
});
