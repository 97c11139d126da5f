import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { mustBeBuilt, program } from './built-program.js';

const examples = join(import.meta.dirname, '../examples');
const file = join(mkdtempSync(join(tmpdir(), 'wintergap-stop-')), 'site.yaml');
// Six modules of 39.9 V in series are 239 V at 25 degC, more than the controller's 150 V.
const tooMany = readFileSync(join(examples, 'kettle-pond.yaml'), 'utf8')
  .replace('inSeries: 2', 'inSeries: 6')
  .replaceAll('../', `${join(examples, '..')}/`);

beforeAll(() => {
  mustBeBuilt();
  writeFileSync(file, tooMany);
});

test.each([
  ['mount', '--years', '1'],
  ['tilt', '--years', '1'],
  ['carry', '--years', '1'],
  ['outlook', '--years', '2'],
])(
  '%s begins with what must not be built, and its JSON names it among the cautions',
  { timeout: 120_000 },
  (...args) => {
    const run = (...more: string[]) =>
      spawnSync(process.execPath, [program, ...args, ...more, '--workers', '1', file], { encoding: 'utf8' }).stdout;
    const text = run();
    expect(text).toMatch(/^STOP, not to be built so: garden pole: /);
    expect(text).not.toMatch(/Cheaper than|Best, beyond chance/);
    const { cautions } = JSON.parse(run('--json')) as { cautions: { code: string }[] };
    expect(cautions.map(({ code }) => code)).toContain('cold-voltage');
  },
);
