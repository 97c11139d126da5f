// Parts of the program, timed within one process.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import v8 from 'node:v8';
import { changedDesign, loadSite } from '@wintergap/site';
import { createLedger } from '@wintergap/tally';
import { judgeWeather, readWeatherYearsFile } from '@wintergap/weather';
import { PreparedCache, simulateSite } from '@wintergap/year';
import { createPlantState, runYear } from '../packages/year/dist/loop/balance.js';
import { median } from './measure.mjs';
import { root, scratch, siteFile } from './place.mjs';
import { compiledBalance } from './yardsticks.mjs';

/**
 * The hours of the balance, the designs of a sweep and the rows of a table, in words.
 *
 * @param plain without the limit that the program raises as it starts (packages/cli/bin/wintergap.js)
 */
export function inside(plain) {
  if (!plain) v8.setFlagsFromString('--max-inlined-bytecode-size-cumulative=3000');
  const site = loadSite(siteFile);
  const prepared = new PreparedCache();
  const { plant } = simulateSite(site.base, prepared);
  return [...balanceLines(plant), ...designLines(site, prepared), ...tableLines()];
}

function balanceLines(plant) {
  const state = createPlantState(plant, 0.8);
  const ledger = createLedger();
  const ours = [];
  const compiled = [];
  const yardstick = compiledBalance();
  for (let i = 0; i < 40; i++) {
    const start = performance.now();
    runYear(plant, state, ledger);
    ours.push(((performance.now() - start) * 1e6) / 8760);
    if (yardstick) compiled.push(yardstick());
  }
  const warm = median(ours.slice(10));
  const own = `- balance: ${warm.toFixed(0)} ns an hour (best ${Math.min(...ours).toFixed(0)})`;
  if (!yardstick) return [own];
  return [`${own}, ${(warm / median(compiled.slice(10))).toFixed(1)} times the same equations in C (-O2); wanted 2.5`];
}

function designLines(site, prepared) {
  const perSecond = (changes, count = 60) => {
    const start = performance.now();
    for (let i = 0; i < count; i++) simulateSite(changedDesign(site, changes(i)), prepared);
    return count / ((performance.now() - start) / 1000);
  };
  const banks = perSecond((i) => ({ 'bank.capacity': `${500 + 10 * i} Ah` }));
  const mounts = perSecond((i) => ({ 'arrays.0.mount': { kind: 'fixed', tilt: 20 + i, azimuth: 180 } }));
  return [
    `- whole years of designs, one thread: ${banks.toFixed(0)} a second when the bank changes, ${mounts.toFixed(0)} when the mount does`,
  ];
}

/** Twenty years of the demo's hours in one table. */
function tableLines() {
  const demo = readFileSync(join(root, 'data-demo/kettle-pond.csv'), 'utf8').trimEnd().split('\n');
  const rows = demo.filter((line) => /^\d/.test(line));
  const twenty = Array.from({ length: 20 }, (_, i) => rows.map((row) => row.replace('2023', String(2001 + i)))).flat();
  const file = scratch('twenty.csv');
  writeFileSync(file, [...demo.filter((line) => !/^\d/.test(line)), ...twenty].join('\n'));
  const readAt = performance.now();
  const years = readWeatherYearsFile(file);
  const judgedAt = performance.now();
  for (const { weather } of years) judgeWeather(weather);
  const judged = performance.now();
  return [
    `- twenty years in one table: ${(judgedAt - readAt).toFixed(0)} ms for ${twenty.length} rows, judged in ${(judged - judgedAt).toFixed(0)} ms`,
  ];
}
