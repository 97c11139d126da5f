// Times and memory of the program, printed as a table. Run after `npm run build`; a quiet machine gives steady figures.
// Uses a real EPW file from the shared folder where there is one (see DEVELOPERS.md), else the demo weather.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import v8 from 'node:v8';

const root = resolve(import.meta.dirname, '..');
const program = join(root, 'packages/cli/bin/wintergap.js');
const folder = mkdtempSync(join(tmpdir(), 'wintergap-bench-'));
const epw = join(process.env.WINTERGAP_SHARED ?? resolve(root, '../shared'), 'weather/chicago-ohare-tmy3.epw');
const example = readFileSync(join(root, 'examples/kettle-pond.yaml'), 'utf8');
const siteFile = join(folder, 'site.yaml');
writeFileSync(
  siteFile,
  existsSync(epw)
    ? example
        .replace(/^weather: .*$/m, `weather: ${epw}`)
        .replace(/^place: .*$/m, 'place: { latitude: 41.98, longitude: -87.92, elevation: 201 m, utcOffset: -6 h }')
    : example.replace(/^weather: .*$/m, `weather: ${join(root, 'data-demo/kettle-pond.csv')}`),
);

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Median wall time of a command, ms, and its peak memory, MB. */
function whole(args, runs = 9) {
  const times = [];
  let peakMB = 0;
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    const { status, stderr } = spawnSync('/usr/bin/env', ['time', '-f', '%M', process.execPath, ...args], {
      encoding: 'utf8',
    });
    times.push(performance.now() - start);
    if (status !== 0) throw new Error(stderr);
    peakMB = Math.max(peakMB, Number(stderr.trim().split('\n').at(-1)) / 1024);
  }
  return { ms: median(times), peakMB };
}

const bare = whole(['-e', '0']);
const year = whole([program, 'year', siteFile]);
console.log(`weather             ${existsSync(epw) ? 'a full EPW file' : 'the demo table (no EPW file found)'}`);
console.log(`node -e 0           ${bare.ms.toFixed(0)} ms, ${bare.peakMB.toFixed(0)} MB`);
console.log(
  `wintergap year      ${year.ms.toFixed(0)} ms = ${(year.ms / bare.ms).toFixed(1)} x node -e 0, ${year.peakMB.toFixed(0)} MB`,
);

// The program raises this limit as it starts (packages/cli/bin/wintergap.js); without it the loop is timed as well.
const { loadSite, changedDesign } = await import('@wintergap/site');
const { simulateSite, PreparedCache } = await import('@wintergap/year');
const { createPlantState, runYear } = await import('../packages/year/dist/loop/balance.js');
const { createLedger } = await import('@wintergap/tally');
if (!process.argv.includes('--plain')) v8.setFlagsFromString('--max-inlined-bytecode-size-cumulative=3000');

const site = loadSite(siteFile);
const prepared = new PreparedCache();
const { plant } = simulateSite(site.base, prepared);
const state = createPlantState(plant, 0.8);
const ledger = createLedger();
const loop = [];
for (let i = 0; i < 40; i++) {
  const start = performance.now();
  runYear(plant, state, ledger);
  loop.push(((performance.now() - start) * 1e6) / 8760);
}
console.log(
  `balance loop        ${median(loop.slice(10)).toFixed(0)} ns an hour (best ${Math.min(...loop).toFixed(0)})`,
);

/** Designs per second in one thread. */
function designsPerSecond(changes, count = 60) {
  const start = performance.now();
  for (let i = 0; i < count; i++) simulateSite(changedDesign(site, changes(i)), prepared);
  return count / ((performance.now() - start) / 1000);
}
const bankOnly = designsPerSecond((i) => ({ 'bank.capacity': `${500 + 10 * i} Ah` }));
const mounts = designsPerSecond((i) => ({ 'arrays.0.mount': { kind: 'fixed', tilt: 20 + i, azimuth: 180 } }));
console.log(
  `designs a second    ${bankOnly.toFixed(0)} when the bank changes, ${mounts.toFixed(0)} when the mount does (one core)`,
);

// Twenty years of the demo's hours in one table.
const { judgeWeather, readWeatherYearsFile } = await import('@wintergap/weather');
const demo = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8').trimEnd().split('\n');
const rows = demo.filter((line) => /^\d/.test(line));
const twenty = Array.from({ length: 20 }, (_, i) => rows.map((row) => row.replace('2023', String(2001 + i)))).flat();
const twentyFile = join(folder, 'twenty.csv');
writeFileSync(twentyFile, [...demo.filter((line) => !/^\d/.test(line)), ...twenty].join('\n'));
const readAt = performance.now();
const years = readWeatherYearsFile(twentyFile);
const judgedAt = performance.now();
for (const { weather } of years) judgeWeather(weather);
console.log(
  `twenty years read   ${(judgedAt - readAt).toFixed(0)} ms for ${twenty.length} rows, judged in ${(performance.now() - judgedAt).toFixed(0)} ms`,
);
rmSync(folder, { recursive: true, force: true });
