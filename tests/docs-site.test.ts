import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { modules, pagePath } from '../docs/api.mjs';

const root = fileURLToPath(new URL('../', import.meta.url));
const site = mkdtempSync(join(tmpdir(), 'wintergap-docs-'));
const reference = join(site, 'reference');
let pages: string[] = [];

beforeAll(() => {
  const eleventy = join(root, 'node_modules/.bin/eleventy');
  execFileSync(eleventy, ['--config=docs/eleventy.config.mjs', '--quiet', `--output=${site}`], { cwd: root });
  const typedoc = join(root, 'docs/reference/node_modules/.bin/typedoc');
  execFileSync(typedoc, ['--options', 'typedoc.mjs', '--out', reference], { cwd: join(root, 'docs/reference') });
  pages = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html'));
}, 180_000);
afterAll(() => rmSync(site, { recursive: true }));

test('the docs are written as a site whose links lead to pages that are there, from disk too', () => {
  expect(pages).toEqual(
    expect.arrayContaining([
      'index.html',
      'guide/start.html',
      'site-file-keys.html',
      'models.html',
      'reference/index.html',
    ]),
  );
  const there = new Map<string, boolean>();
  for (const page of pages) {
    const html = readFileSync(join(site, page), 'utf8');
    for (const [, link] of html.matchAll(/(?:href|src)="([^"#:?]+)(?:\?[^"#]*)?(?:#[^"]*)?"/g)) {
      const path = join(site, dirname(page), link!);
      if (!there.has(path)) there.set(path, existsSync(path));
      expect(there.get(path), `${page} links ${link}`).toBe(true);
    }
  }
});

test.each(modules)('the reference has a page for everything that %s exports', (module) => {
  const exported = [
    ...readFileSync(pagePath(module), 'utf8').matchAll(
      /^export (?:declare )?(?:function|const|interface|type|class) (\w+)/gm,
    ),
  ];
  expect(exported).not.toEqual([]);
  const file = `_wintergap_${module.replace('/', '_')}`;
  const own = readFileSync(join(reference, 'modules', `${file}.html`), 'utf8');
  for (const [, name] of exported) {
    // What is exported in two places has its page in one of them.
    const page = new RegExp(`href="\\.\\./[a-z]+/_wintergap_[a-z_-]+\\.${name}(-\\d+)?\\.html"`);
    expect(own, name).toMatch(page);
  }
});

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
