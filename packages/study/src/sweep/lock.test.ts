import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { lockSweepFile } from './lock.js';

const folder = mkdtempSync(join(tmpdir(), 'sweep-lock-'));
afterAll(() => rmSync(folder, { recursive: true }));
const path = (name: string) => join(folder, name);

/** The lock as another run left it behind. */
function locked(name: string, holder: object | string) {
  mkdirSync(`${path(name)}.lock`);
  writeFileSync(`${path(name)}.lock-holder`, typeof holder === 'string' ? holder : JSON.stringify(holder));
  return () => lockSweepFile(path(name));
}
const since = '2026-01-01T00:00:00.000Z';
/** No process has a number so large. */
const gone = 2 ** 30;

test('a file that this run writes says so until it is released, and can then be written again', () => {
  const lock = lockSweepFile(path('own.csv'));
  expect(JSON.parse(readFileSync(`${path('own.csv')}.lock-holder`, 'utf8'))).toMatchObject({
    process: process.pid,
    host: hostname(),
  });
  expect(() => lock.mustHold()).not.toThrow();
  expect(() => lockSweepFile(path('own.csv'))).toThrow(
    `process ${process.pid} on ${hostname()} has been writing it since`,
  );
  lock.release();
  expect([existsSync(`${path('own.csv')}.lock`), existsSync(`${path('own.csv')}.lock-holder`)]).toEqual([false, false]);
  lockSweepFile(path('own.csv')).release();
});

test('the lock of a run of this machine that is gone is taken over at once', () => {
  const take = locked('left.csv', { process: gone, host: hostname(), since });
  const lock = take();
  expect(JSON.parse(readFileSync(`${path('left.csv')}.lock-holder`, 'utf8'))).toMatchObject({ process: process.pid });
  lock.release();
});

test('the lock of another machine is left, though no such process runs here', () => {
  expect(locked('far.csv', { process: gone, host: 'barn', since })).toThrow(
    `process ${gone} on barn has been writing it since ${since}; wait for it`,
  );
});

test("a lock whose holder cannot be read is somebody's all the same", () => {
  const torn = [
    '',
    '{',
    '{}',
    '{"process":"7","host":"barn","since":"x"}',
    '{"process":7,"since":"x"}',
    '{"process":7,"host":"barn"}',
  ];
  for (const [i, holder] of torn.entries())
    expect(locked(`torn-${i}.csv`, holder), holder).toThrow('another run is writing it');
});

test('a folder that is not there cannot hold a lock', () => {
  expect(() => lockSweepFile(join(folder, 'missing', 'a.csv'))).toThrow('cannot be locked');
});
