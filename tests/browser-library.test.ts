import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createContext, Script } from 'node:vm';
import { buildSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { parse } from 'yaml';

const root = join(import.meta.dirname, '..');

// What the page of somebody else would hold: a design as plain values, its weather made from means, its year.
const page = `
import { designAsWritten } from '@wintergap/site';
import { ledgerColumn } from '@wintergap/tally';
import { madeWeather, simulateInputs } from '@wintergap/year';

export function yearOf(written) {
  const design = designAsWritten(written, 'page');
  const { summary, ledger } = simulateInputs(design, { weather: madeWeather(design, 1, 0), measured: null });
  return JSON.stringify([summary.generator.hours, ...ledgerColumn(ledger, 'stateOfCharge').values]);
}
`;

test('a year runs in a browser to the same bits: nothing of the packages behind it asks for Node.js', async () => {
  const { outputFiles, metafile } = await build({
    stdin: { contents: page, resolveDir: root },
    absWorkingDir: root,
    bundle: true,
    write: false,
    metafile: true,
    format: 'iife',
    globalName: 'page',
    platform: 'browser',
    external: ['node:*'],
    logLevel: 'error',
  });
  const asked = Object.values(metafile.outputs).flatMap(({ imports }) => imports.map(({ path }) => path));
  expect(asked).toEqual([]);

  const written = parse(readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8'));
  for (const beside of ['variants', 'sweep', 'size', 'carry', 'costs']) delete written[beside];
  written.weather = {
    months: {
      irradiation: [1.3, 2.4, 3.8, 4.9, 5.7, 6.1, 6.2, 5.2, 3.8, 2.3, 1.3, 1.0].map((kWh) => `${kWh} kWh/m2`),
      air: [-12, -9, -3, 5, 12, 17, 19, 18, 13, 6, -2, -9].map((degC) => `${degC} degC`),
    },
  };
  // A world with what the language has, and nothing of Node.js.
  const world = createContext({ written: JSON.stringify(written) });
  const shown = new Script(`${outputFiles[0]!.text}; page.yearOf(JSON.parse(written))`).runInContext(world);
  const { summary, ledger } = simulateSite(buildSite(written).base);
  expect(summary.generator.hours).toBeGreaterThan(0);
  expect(JSON.parse(shown)).toEqual([summary.generator.hours, ...ledger.stateOfCharge]);
});
