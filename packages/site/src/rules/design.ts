import type * as z from 'zod';
import type { SiteValues } from '../schema/design.js';
import { plain } from './bank.js';
import { checkCabinet } from './cabinet.js';

type Report = (path: PropertyKey[], message: string) => void;

/** What has to fit together between the keys of a design, beyond what each key allows by itself. */
export function checkDesign(site: SiteValues, context: z.core.$RefinementCtx<SiteValues>): void {
  const report: Report = (path, message) => context.addIssue({ code: 'custom', path, message });
  checkNames(site, report);
  checkClock(site, report);
  site.arrays.forEach((array, i) => {
    const { vmp, imp, voc, isc, power } = array.module;
    if (vmp >= voc) report(['arrays', i, 'module', 'vmp'], `found ${vmp} V, expected less than voc, ${voc} V`);
    if (imp >= isc) report(['arrays', i, 'module', 'imp'], `found ${imp} A, expected less than isc, ${isc} A`);
    if (power !== undefined && Math.abs(vmp * imp - power) > 0.04 * power) {
      report(
        ['arrays', i, 'module', 'power'],
        `found ${power} W, but vmp x imp is ${(vmp * imp).toFixed(0)} W; they belong to one sheet and should agree`,
      );
    }
    const { mount } = array;
    if (mount.kind === 'pole' && (mount.tilt === undefined) === (mount.tilts === undefined)) {
      report(['arrays', i, 'mount'], 'a pole needs either tilt: 60 or tilts: [{ from: 10-01, tilt: 68 }, ...]');
    }
    checkSteepest(mount, (path, message) => report(['arrays', i, 'mount', ...path], message));
  });
  checkCabinet(site.bank, report);
  checkGenerator(site, report);
  checkInverter(site.inverter, report);
  site.loads.forEach((load, i) => {
    if (load.runs !== undefined && load.perDay !== undefined) {
      report(
        ['loads', i, 'perDay'],
        'a load runs either a share of the time (runs) or a time per day (perDay), not both',
      );
    }
    if (load.bus === 'ac' && !site.inverter && site.generator?.output.bus !== 'ac') {
      report(['loads', i, 'bus'], 'an AC load needs an inverter: { power: 2 kW, idle: 15 W, efficiency: 92 % }');
    }
  });
  site.events.forEach((event, i) => {
    if ((event.energy === undefined) === (event.power === undefined)) {
      report(['events', i], 'an event needs either energy: 30 kWh or power: 2 kW');
    }
  });
}

function checkInverter(inverter: SiteValues['inverter'], report: Report): void {
  if (!inverter) return;
  const { power, surge, idle, search } = inverter;
  const atMost = (path: PropertyKey[], found: number, most: number, what: string) => {
    if (found > most) report(['inverter', ...path], `found ${found} W, expected at most ${what}, ${most} W`);
  };
  if (surge !== undefined && surge < power) {
    report(['inverter', 'surge'], `found ${surge} W, expected at least the lasting power, ${power} W`);
  }
  atMost(['idle'], idle, power, 'the power');
  if (!search) return;
  atMost(['search', 'idle'], search.idle, idle, 'the idle draw when not searching');
  atMost(['search', 'below'], search.below, power, 'the power');
}

function checkSteepest(mount: SiteValues['arrays'][number]['mount'], report: Report): void {
  if (mount.kind === 'one-axis' || mount.kind === 'two-axis' || mount.maxTilt === undefined) return;
  const { maxTilt } = mount;
  const tell = (path: PropertyKey[], tilt: number) =>
    report(path, `found ${tilt}, expected no more than the mount can do, maxTilt ${maxTilt}`);
  if (mount.kind !== 'seasonal' && mount.tilt !== undefined && mount.tilt > maxTilt) tell(['tilt'], mount.tilt);
  if (mount.kind === 'fixed') return;
  mount.tilts?.forEach(({ tilt }, i) => {
    if (tilt > maxTilt) tell(['tilts', i, 'tilt'], tilt);
  });
}

/** No clock on earth is further from the sun than this, h. */
const furthestClockH = 3.6;

function checkClock({ place }: SiteValues, report: Report): void {
  const apart = (longitude: number) => Math.abs(place.utcOffset - longitude / 15);
  const hours = Math.min(apart(place.longitude), 24 - apart(place.longitude));
  if (hours <= furthestClockH) return;
  const meant = apart(-place.longitude) <= furthestClockH ? `; did you mean longitude ${-place.longitude}?` : '';
  report(
    ['place', 'utcOffset'],
    `found ${place.utcOffset} h, but at longitude ${place.longitude} the sun keeps a clock of about ${Math.round(place.longitude / 15)} h; west is negative in both${meant}`,
  );
}

function checkNames({ arrays, loads }: SiteValues, report: Report): void {
  const lists = { arrays, loads };
  for (const [key, list] of Object.entries(lists)) {
    const seen = new Set<string>();
    list.forEach(({ name }, i) => {
      if (seen.has(name)) report([key, i, 'name'], `"${name}" is there twice; variants tell items apart by name`);
      seen.add(name);
    });
  }
}

function checkGenerator({ generator, bank }: SiteValues, report: Report): void {
  if (!generator) return;
  const { start, stop, fuel } = generator;
  if (fuel.idle > fuel.atFull) {
    report(
      ['generator', 'fuel', 'idle'],
      `found ${fuel.idle} L/h, expected no more than at full power, ${fuel.atFull} L/h`,
    );
  }
  if (start.between && start.between[0] === start.between[1]) {
    report(['generator', 'start', 'between'], `found two times ${start.between[0]} h; a whole day is [0, 24]`);
  }
  const starts = [start.below, start.byHand?.below, start.beforeDullDay?.below].filter((below) => below !== undefined);
  if (starts.length === 0 && start.voltageBelow === undefined) {
    report(['generator', 'start'], 'expected what starts the engine, such as below: 45 %');
  }
  if (stop.above === undefined && !stop.atBulkEnd) {
    report(['generator', 'stop'], 'expected what stops the engine, such as above: 80 %');
  }
  const highest = Math.max(...starts);
  if (stop.above !== undefined && stop.above <= highest) {
    report(
      ['generator', 'stop', 'above'],
      `found ${plain(stop.above * 100)} %, expected more than the ${plain(highest * 100)} % at which the engine starts`,
    );
  }
  if (bank.floor !== undefined && starts.length > 0 && highest < bank.floor) {
    report(
      ['generator', 'start'],
      `the engine starts below ${plain(highest * 100)} %, but the bank's floor is ${plain(bank.floor * 100)} %: it would start only when the bank is empty`,
    );
  }
}
