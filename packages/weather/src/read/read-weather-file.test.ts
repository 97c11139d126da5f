import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { clearYear } from '../check/clear-year.fixture.js';
import { readWeatherFile } from './read-weather-file.js';
import { epwLines } from './weather-files.fixture.js';

const folder = mkdtempSync(join(tmpdir(), 'weather-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('a header in ISO 8859-1 is read, as is one in UTF-8', () => {
  const text = epwLines(clearYear()).join('\n').replace('Kettle Pond', 'Mühle');
  const path = join(folder, 'muehle.epw');
  for (const encoding of ['latin1', 'utf8'] as const) {
    writeFileSync(path, text, encoding);
    const weather = readWeatherFile(path);
    expect(weather.place.name).toBe('Mühle');
    expect(weather.source).toBe('muehle.epw');
  }
});

test('a file with a long gap is to be mended where it lies', () => {
  const lines = epwLines(clearYear()).map((line, at) =>
    at < 100 || at > 130 ? line : line.replace(/(\?9\?9\?9),[^,]*/, '$1,99.9'),
  );
  const path = join(folder, 'gap.epw');
  writeFileSync(path, lines.join('\n'));
  expect(() => readWeatherFile(path)).toThrow(`wintergap weather ${path} --mend`);
});

test('a file that is not there is said to be so', () => {
  expect(() => readWeatherFile(join(folder, 'none.epw'))).toThrow('none.epw line 1: cannot be opened (ENOENT)');
  expect(() => readWeatherFile(folder)).toThrow('line 1: cannot be opened: it is a folder');
});

test('a device is refused before it is read, and UTF-16 is called by its name', () => {
  expect(() => readWeatherFile('/dev/zero')).toThrow('zero line 1: cannot be opened: it is a device, expected a file');
  const path = join(folder, 'wide.csv');
  for (const mark of ['\ufeff', '']) {
    writeFileSync(path, `${mark}time,ghi\n`, 'utf16le');
    expect(() => readWeatherFile(path)).toThrow('is text in UTF-16 (little endian), expected UTF-8; save it again');
  }
});
