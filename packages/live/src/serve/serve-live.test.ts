import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type LiveServer, serveLive } from './serve-live.js';

const example = readFileSync(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'), 'utf8');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-live-'));
const siteFile = join(folder, 'place.yaml');
let server: LiveServer;
let port = 0;
let token = '';

beforeAll(async () => {
  writeFileSync(siteFile, example);
  server = await serveLive((savePath) => `<p>${savePath}</p>`, siteFile);
  const { port: free, pathname } = new URL(server.address);
  port = Number(free);
  token = pathname.split('/')[1]!;
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Asked {
  path?: string;
  method?: string;
  headers?: Record<string, string>;
  body?: string;
  host?: string;
}

function ask({ path = `/${token}/`, method = 'GET', headers = {}, body, host = '127.0.0.1' }: Asked) {
  return new Promise<{ status: number; text: string; headers: Record<string, unknown> }>((resolve, reject) => {
    const asked = request({ host, port, path, method, headers }, (response) => {
      let text = '';
      response.on('data', (piece) => {
        text += piece;
      });
      response.on('end', () => resolve({ status: response.statusCode!, text, headers: response.headers }));
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

const own = () => ({ Origin: `http://127.0.0.1:${port}`, 'Content-Type': 'application/json' });
const save = (name: unknown, text: unknown, headers: Record<string, string> = own()) =>
  ask({ path: `/${token}/save`, method: 'POST', headers, body: JSON.stringify({ name, text }) });

test('whoever knows the token gets the page, and a page of nobody else may frame or keep it', async () => {
  const { status, text, headers } = await ask({});
  expect([status, text]).toEqual([200, `<p>/${token}/save</p>`]);
  expect(headers['cache-control']).toBe('no-store');
  expect(headers['x-frame-options']).toBe('DENY');
  expect(token.length).toBeGreaterThanOrEqual(32);
});

test.each([
  ['no token', { path: '/' }],
  ['a wrong token', { path: '/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA/' }],
  ['a path beyond the page', { path: '/favicon.ico' }],
])('%s: there is nothing', async (_, asked) => {
  expect(await ask(asked)).toMatchObject({ status: 404, text: 'There is nothing here.' });
});

test.each([
  ['another name for this machine', { headers: { Host: 'evil.example' } }],
  ['another port', { headers: { Host: '127.0.0.1:1' } }],
  ['a page of another origin', { headers: { Origin: 'https://evil.example' } }],
  ['a page without origin', { headers: { Origin: 'null' } }],
])('%s is refused', async (_, asked) => {
  expect((await ask(asked)).status).toBe(403);
});

test('it listens on the loopback address alone', async () => {
  const outside = Object.values(networkInterfaces())
    .flat()
    .find((one) => one && one.family === 'IPv4' && !one.internal);
  if (!outside) return;
  await expect(ask({ host: outside.address })).rejects.toThrow(/ECONNREFUSED/);
});

test('a site file is written beside the original, whole, in a file that was not there', async () => {
  const text = example.replace('../data-demo/kettle-pond.csv', 'weather.csv');
  expect(await save('place steeper.yaml', text)).toMatchObject({ status: 200, text: 'Written: place steeper.yaml' });
  expect(readFileSync(join(folder, 'place steeper.yaml'), 'utf8')).toBe(text);
  const again = await save('place steeper.yaml', `${text}\n`);
  expect([again.status, again.text]).toEqual([
    400,
    expect.stringContaining('there is a file place steeper.yaml already'),
  ]);
  expect(readFileSync(join(folder, 'place steeper.yaml'), 'utf8')).toBe(text);
});

test.each([
  ['the original', 'place.yaml'],
  ['a link', 'link.yaml'],
  ['a path', '../place.yaml'],
  ['a path of another kind', 'a\\b.yaml'],
  ['a hidden file', '.place.yaml'],
  ['a file of another kind', 'place.sh'],
  ['nothing', ''],
])('%s is never written to', async (_, name) => {
  const target = join(folder, 'target');
  if (name === 'link.yaml') symlinkSync(target, join(folder, name));
  const before = readdirSync(folder);
  expect((await save(name, example)).status).toBe(400);
  expect(readdirSync(folder)).toEqual(before);
  expect(readFileSync(siteFile, 'utf8')).toBe(example);
});

test('what is no site file, no JSON, too long, or sent by somebody else is not written', async () => {
  const before = readdirSync(folder);
  expect(await save('odd.yaml', 'name: [')).toMatchObject({ status: 400 });
  expect(await save('odd.yaml', 7)).toMatchObject({ status: 400 });
  expect((await ask({ path: `/${token}/save`, method: 'POST', headers: own(), body: '{' })).status).toBe(400);
  expect((await save('odd.yaml', 'x'.repeat(3e6))).status).toBe(413);
  expect((await save('odd.yaml', example, { ...own(), Origin: 'https://evil.example' })).status).toBe(403);
  expect((await save('odd.yaml', example, { 'Content-Type': 'application/json' })).status).toBe(403);
  expect((await save('odd.yaml', example, { ...own(), 'Content-Type': 'text/plain' })).status).toBe(415);
  expect(readdirSync(folder)).toEqual(before);
});
