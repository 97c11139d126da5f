// Parts of the program, timed within one process.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import v8 from 'node:v8';
import { changedDesign, loadSite } from '@wintergap/site';
import { createLedger, yearSum } from '@wintergap/tally';
import { judgeWeather, readWeatherYearsFile } from '@wintergap/weather';
import { PreparedCache, simulateBare, simulateSite, siteWeather } from '@wintergap/year';
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

/** Pairs of runs, ours and the same in C, and how many years of each the fastest is taken of. */
const pairs = 20;
const yearsOfRun = 3;

function balanceLines(built) {
  // Arrays are at their maximum power: the C program leaves out the few dim hours in which the bank holds them.
  const sources = built.sources.map((source) => ({ ...source, controller: { ...source.controller, grid: null } }));
  const plant = { ...built, sources };
  const run = balanceRunner(plant);
  const yardstick = compiledBalance(plant);
  for (let i = 0; i < 10; i++) run();
  const ours = [];
  const ratios = [];
  for (let i = 0; i < pairs; i++) {
    ours.push(run());
    if (!yardstick) continue;
    const theirs = yardstick(yearsOfRun);
    mustBeSameYear(ours[i], theirs);
    ratios.push(ours[i].ns / theirs.ns);
  }
  const ns = ours.map((of) => of.ns);
  const own = `- balance: ${median(ns).toFixed(0)} ns an hour (best ${Math.min(...ns).toFixed(0)}), ${median(ours.map((of) => of.bytes)).toFixed(0)} bytes allocated`;
  if (!yardstick) return [own];
  return [`${own}, ${median(ratios).toFixed(1)} times the same equations in C (-O2); wanted 2.5`];
}

/** Runs a few years and gives ns and bytes an hour of the fastest, its engine hours and the charge at its end. */
function balanceRunner(plant) {
  const ledger = createLedger();
  return () => {
    let best = null;
    for (let i = 0; i < yearsOfRun; i++) {
      const state = createPlantState(plant, 0.8);
      const { heapUsed } = process.memoryUsage();
      const start = performance.now();
      runYear(plant, state, ledger);
      const ns = ((performance.now() - start) * 1e6) / 8760;
      const bytes = (process.memoryUsage().heapUsed - heapUsed) / 8760;
      if (best === null || ns < best.ns) best = { ns, bytes, charge: state.stateOfCharge };
    }
    return { ...best, hours: yearSum(ledger.generatorH) };
  };
}

function mustBeSameYear(ours, theirs) {
  const apart = Math.abs(ours.hours - theirs.hours) + Math.abs(ours.charge - theirs.charge);
  if (apart < 1e-6) return;
  throw new Error(`bench/balance.c does not run the same year: ${theirs.hours} h of engine, here ${ours.hours} h`);
}

/** Designs a second as a sweep runs them, once all is compiled: their ledgers and limits, without summaries. */
function designLines(site, prepared) {
  const weather = siteWeather(site.base, prepared);
  const ledger = createLedger();
  const run = (changes) => simulateBare(changedDesign(site, changes), { weather, measured: null }, prepared, ledger);
  const perSecond = (changes, count = 60) => {
    for (let i = 0; i < count; i++) run(changes(i));
    const start = performance.now();
    for (let i = count; i < 2 * count; i++) run(changes(i));
    return count / ((performance.now() - start) / 1000);
  };
  const banks = perSecond((i) => ({ 'bank.capacity': `${500 + 5 * i} Ah` }));
  const mounts = perSecond((i) => ({ 'arrays.0.mount': { kind: 'fixed', tilt: 20 + i / 3, azimuth: 180 } }));
  return [
    `- designs of a sweep, one thread: ${banks.toFixed(0)} a second when the bank changes, ${mounts.toFixed(0)} when the mount does; wanted 75 and 30`,
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
