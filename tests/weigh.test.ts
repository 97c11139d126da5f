import { readFileSync } from 'node:fs';
import { lossesText, tiltText, weighText, whyText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { changedDesign, loadSite, parseSite, type Site } from '@wintergap/site';
import { bestTilts, rerunOf, type SiteWeights, variantReasons, weighSite } from '@wintergap/study';
import { monthlySums, yearSum } from '@wintergap/tally';
import { arrayLosses, PreparedCache, simulateSite, type YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';

const pathOf = (name: string) => new URL(`../examples/${name}.yaml`, import.meta.url).pathname;
const pond = loadSite(pathOf('kettle-pond'));
const cabin = loadSite(pathOf('controllers'));
const prepared = new PreparedCache();
const run = (site: Site): YearResult => simulateSite(site, prepared);
const changed = (changes: Record<string, unknown>) => run(changedDesign(pond, changes)).summary;
const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
const longestLine = (text: string) => Math.max(...text.split('\n').map((line) => line.length));

/** One year has no spread: a weight is then the difference of two years, to the last bit. */
const fileYear = { years: 1, workers: 1 };
const base = run(pond.base);
const weights = await weighSite(pond.base, fileYear);
const cabinWeights = await weighSite({ ...cabin.base, loads: cabin.base.loads.slice(0, 1) }, fileYear);

const effect = (name: string) => weights.effects.find((one) => one.name === name)!;

// The same changes written into the site file: the second way to the same year.
test('an effect weighs what the year differs by when the site file leaves it out', () => {
  const before = base.summary.generator;
  for (const [name, changes] of [
    ['snow on the array', { snow: { cover: 'none' } }],
    ['skyline', { skyline: [] }],
    ['soiling', { 'arrays.0.losses.soiling': '0 %' }],
    ['controller conversion', { 'arrays.0.controller.efficiency': '100 %' }],
    ['controller at night', { 'arrays.0.controller.nightDraw': '0 W' }],
  ] as const) {
    const { generator } = changed(changes);
    expect(effect(name).weight.generatorHours.mean, name).toBe(before.hours - generator.hours);
    expect(effect(name).weight.fuelLitres, name).toBe(before.fuelLitres - generator.fuelLitres);
    expect(effect(name).weight.starts, name).toBe(before.starts - generator.starts);
  }
});

test('a load weighs what the year differs by without it', () => {
  const written = pond.document.content.loads as { name: string }[];
  const { name } = weights.loads[0]!;
  const without = changed({ loads: written.filter((load) => load.name !== name) });
  expect(weights.loads[0]!.weight.generatorHours.mean).toBe(base.summary.generator.hours - without.generator.hours);
  expect(weights.loads[0]!.weight.generatorHours.mean).toBeGreaterThan(5);
});

test('the loads share the energy of the year and of the darkest month among them', () => {
  const sum = weights.loads.reduce((kWh, load) => kWh + load.kWhYear, 0);
  expect(sum).toBeCloseTo(base.summary.load.acKWh + base.summary.load.dcKWh, 6);
  expect(weights.loads.reduce((share, load) => share + load.darkMonthShare, 0)).toBeCloseTo(1, 9);
});

test('a load of nothing weighs nothing, and standby and events are told apart', async () => {
  const text = readFileSync(pond.file, 'utf8')
    .replace(
      'loads:\n',
      'loads:\n  - { name: doorbell, power: 0 W, bus: dc }\n  - { name: stereo, power: 9 W, runs: 0 %, bus: ac, standby: 5 W }\n',
    )
    .replace('generator:\n', 'events: [{ name: party, on: 12-20, at: 18, lasts: 6 h, energy: 9 kWh }]\n\ngenerator:\n');
  const site = parseSite(text, pond.file);
  // The first three loads and the party: few years to run.
  const { loads } = await weighSite({ ...site.base, loads: site.base.loads.slice(0, 3) }, fileYear);
  const load = (name: string) => loads.find((one) => one.name === name)!;
  expect(load('doorbell').weight).toMatchObject({
    generatorHours: { mean: 0, verdict: 'none' },
    fuelLitres: 0,
    starts: 0,
    darkKWh: { mean: 0, verdict: 'none' },
  });
  expect(load('stereo').standbyKWhYear).toBeCloseTo(0.005 * 8760, 9);
  expect(load('stereo').kWhYear).toBeCloseTo(0.005 * 8760, 9);
  expect(load('party').kind).toBe('event');
  expect(load('party').kWhYear).toBeCloseTo(9, 9);
  expect(load('party').weight.fuelLitres).toBeGreaterThan(1);
});

// 18 W in 8760 hours: a set that gives DC never relieves the inverter, and no load stays dark.
test('an inverter that idles for nothing saves its idle draw and no other loss', () => {
  const idle = run({
    ...pond.base,
    inverter: { ...pond.base.inverter!, search: { idle: 0, below: pond.base.inverter!.power } },
  });
  const savedKWh = (yearSum(base.ledger.inverterLossWh) - yearSum(idle.ledger.inverterLossWh)) / 1000;
  expect(savedKWh).toBeCloseTo(0.018 * 8760, 6);
  expect(effect('inverter idling').weight.generatorHours.mean).toBe(
    base.summary.generator.hours - idle.summary.generator.hours,
  );
});

test('an effect that a design has nothing of is not listed', () => {
  const names = weights.effects.map(({ name }) => name);
  for (const absent of ['tracker drive', 'direct connection', 'standby of loads', 'ageing of the modules']) {
    expect(names).not.toContain(absent);
  }
  expect(names).toContain('snow on the array');
});

test('a large set runs until acceptance limits it: beyond some size its hours stop falling and only its fuel grows', () => {
  const { sizes, varies, enoughW } = weights.charger!;
  expect(varies).toBe('output');
  const at = (times: number) => sizes.find((size) => size.times === times)!;
  expect(at(0.5).outcome.generatorHours).toBeGreaterThan(1.3 * at(1).outcome.generatorHours);
  // Per run: of the nine or ten runs of this year chance adds or spares one.
  const hoursPerRun = (times: number) => at(times).outcome.generatorHours / at(times).outcome.starts;
  expect(hoursPerRun(4)).toBeGreaterThan(0.9 * hoursPerRun(2));
  expect(hoursPerRun(1)).toBeGreaterThan(1.2 * hoursPerRun(2));
  expect(at(4).outcome.fuelLitres).toBeGreaterThan(1.2 * at(2).outcome.fuelLitres);
  expect(at(4).meanOutputW).toBeLessThan(0.5 * at(4).powerW);
  expect(enoughW).not.toBeNull();
  for (const { powerW, meanOutputW } of sizes) expect(meanOutputW).toBeLessThanOrEqual(powerW);
});

test('chargers of an AC set are tried up to what the set gives', () => {
  const { charger } = cabinWeights;
  expect(charger!.varies).toBe('charger');
  expect(charger!.setLimitW).toBeCloseTo(1600 * 0.85, 9);
  expect(charger!.sizes.filter(({ powerW }) => powerW >= charger!.setLimitW!)).toHaveLength(1);
});

test('more foam keeps the bank warmer in the cold', () => {
  const { cabinet } = cabinWeights;
  const [own, foam, half] = cabinet!;
  expect(foam!.name).toBe('2 inches more foam');
  expect(foam!.coldestBankC).toBeGreaterThan(own!.coldestBankC + 2);
  // 2 inches on 2 inches is a little less than half the loss, since the air at the walls insulates as well.
  expect(half!.coldestBankC).toBeGreaterThan(foam!.coldestBankC - 1);
});

// 24 kWh at 180 each.
test('foam, air and life are one trade: a warmer bank lasts shorter, and its wear costs more a year', async () => {
  const { cabinet: choices } = await weighSite(
    { ...pond.base, loads: pond.base.loads.slice(0, 1) },
    fileYear,
    readCosts(pond),
  );
  const of = (name: string) => choices!.find((choice) => choice.name === name)!;
  const own = of('as designed');
  expect(of('2 inches more foam').warmestBankC).toBeGreaterThan(own.warmestBankC);
  expect(of('2 inches more foam').bankYears).toBeLessThan(own.bankYears);
  expect(of('half the foam').bankYears).toBeGreaterThan(own.bankYears);
  expect(of('ventilated for gas').bankYears).toBeGreaterThan(own.bankYears);
  for (const { bankYears, wearPerYear } of choices!) expect(wearPerYear! * bankYears).toBeCloseTo(24 * 180, 6);
});

// Differences of single years may be the luck of a run: with one year nothing is said to save or cost hours.
test('a cabinet that the years cannot tell apart is not praised', () => {
  const page = weighText(weights, 'metric').replaceAll('\n', ' ');
  expect(page).toContain('2 inches more foam: no difference that 1 year can show');
  expect(page).not.toMatch(/foam saves/);
});

test('the parts of a difference and the rest add up to it', () => {
  const designs = [
    { name: 'base', result: run(cabin.base) },
    ...['maximum-power', 'large, direct'].map((name) => ({ name, result: run(cabin.variants.get(name)!) })),
  ] as const;
  const reasons = variantReasons(
    [designs[0]!, ...designs.slice(1)],
    rerunOf(() => {}, prepared),
  );
  for (const { generatorHours, effects, restHours, energy } of reasons) {
    expect(effects.reduce((sum, part) => sum + part.generatorHours, restHours)).toBeCloseTo(generatorHours, 9);
    expect(energy.arrayParts.reduce((sum, part) => sum + part.kWh, 0)).toBeCloseTo(energy.arrayOfferedKWh, 6);
  }
  // What sets a maximum-power controller apart from a direct connection is that connection.
  const tracked = reasons.find(({ variant }) => variant === 'maximum-power')!;
  expect(tracked.effects[0]!.name).toBe('direct connection');
  expect(tracked.effects[0]!.generatorHours / tracked.generatorHours).toBeGreaterThan(0.8);
  expect(longestLine(whyText(reasons, 'metric'))).toBeLessThanOrEqual(80);
});

test('a variant like the base differs by nothing, for no reason', () => {
  const sunless = run({ ...cabin.base, arrays: [] });
  const designs = [
    { name: 'base', result: sunless },
    { name: 'same', result: sunless },
  ] as const;
  const [reason] = variantReasons(designs, run);
  expect(reason).toMatchObject({ generatorHours: 0, fuelLitres: 0, effects: [], restHours: 0 });
  expect(whyText([reason!], 'metric')).toContain('same: no difference.');
});

test('the array chain closes on the ledger, month by month', () => {
  const used = monthlySums(base.ledger.arrayUsedWh);
  const [{ chain }] = arrayLosses(base) as [ReturnType<typeof arrayLosses>[number]];
  for (let m = 0; m < 12; m++) expect(chain.restKWh[m]! / (used[m]! / 1000)).toBeCloseTo(1, 6);
  const taken = chain.losses.reduce((sum, { kWh }) => sum + total(kWh), 0);
  expect(total(chain.startKWh) - taken).toBeCloseTo(base.summary.array.usedKWh, 6);
  const loss = (name: string) => total(chain.losses.find((line) => line.name === name)!.kWh);
  expect(loss('throttled')).toBeCloseTo(base.summary.array.throttledKWh, 6);
  expect(loss('current limit')).toBeCloseTo(base.summary.array.clippedKWh, 6);
  // 97 % of what comes in goes out.
  expect(loss('above the limit, bank full')).toBeCloseTo(yearSum(base.ledger.spareWh) / 1000, 6);
  const rest = base.summary.array.availableKWh + loss('current limit') + loss('above the limit, bank full');
  expect(loss('conversion')).toBeCloseTo((rest / 0.97) * 0.03, 6);
});

test('the chains of several arrays, one of them direct, close together and name what the voltage within the hour does', () => {
  const [roof] = cabin.base.arrays;
  const tracked = cabin.variants.get('in series')!.arrays[0]!;
  const both = run({ ...cabin.base, arrays: [roof!, { ...tracked, name: 'shed', inSeries: 3 }] });
  const losses = arrayLosses(both);
  expect(losses.map(({ name }) => name)).toEqual(['roof', 'shed']);
  const used = monthlySums(both.ledger.arrayUsedWh);
  for (let m = 0; m < 12; m++) {
    const rest = losses.reduce((sum, { chain }) => sum + chain.restKWh[m]!, 0);
    expect(rest / (used[m]! / 1000)).toBeCloseTo(1, 6);
  }
  const line = (i: number, name: string) => total(losses[i]!.chain.losses.find((loss) => loss.name === name)!.kWh);
  expect(line(0, 'off the best voltage')).toBeGreaterThan(10);
  expect(Math.abs(line(0, 'voltage in the hour'))).toBeLessThan(0.01 * total(losses[0]!.chain.startKWh));
  expect(line(1, 'off the best voltage')).toBe(0);
  expect(line(1, 'voltage in the hour')).toBe(0);
});

test('no other single tilt catches more light, and two catch no less than one', async () => {
  const fixed = pond.variants.get('fixed')!;
  const tilts = await bestTilts(fixed, undefined, undefined, { years: 2, workers: 1 });
  const light = (tilt: number) => {
    const result = run({ ...fixed, arrays: [{ ...fixed.arrays[0]!, mount: { kind: 'fixed', tilt, azimuth: 180 } }] });
    return yearSum(result.arrays[0]!.dc.litWm2) / 1000;
  };
  const { one, two } = tilts.best.year;
  expect(one.yearKWhM2).toBeCloseTo(light(one.tilts[0]!.tiltDeg), 6);
  for (const tilt of [20, 30, 40, 50, 60, 70]) expect(light(tilt)).toBeLessThanOrEqual(one.yearKWhM2);
  expect(two.yearKWhM2).toBeGreaterThan(one.yearKWhM2);
  const [winter, summer] = two.tilts;
  expect(winter!.tiltDeg).toBeGreaterThan(summer!.tiltDeg);
  const dark = tilts.best['dark months'];
  expect(dark.one.tilts[0]!.tiltDeg).toBeGreaterThan(one.tilts[0]!.tiltDeg);
  expect(dark.one.darkMonthsKWhM2).toBeGreaterThan(one.darkMonthsKWhM2);
  for (const { tried, equal, choose } of [tilts.engine.one, tilts.engine.dark]) {
    const least = Math.min(...tried.map(({ hours }) => hours.mean));
    const within = tried.filter(({ tiltDeg }) => tiltDeg >= equal.fromDeg && tiltDeg <= equal.toDeg);
    // The least stands in the range, nothing in it is told apart from the least, and what is chosen was tried.
    expect(within.some(({ hours }) => hours.mean === least)).toBe(true);
    expect(within.every(({ againstLeast }) => againstLeast.verdict === 'none')).toBe(true);
    expect(tried.map(({ tiltDeg }) => tiltDeg)).toContain(choose.tiltDeg);
  }
  expect(longestLine(tiltText(tilts, 'metric'))).toBeLessThanOrEqual(80);
  expect(longestLine(tiltText(tilts, 'us'))).toBeLessThanOrEqual(80);
});

test('a mount without a tilt, and an array that is not there, are refused by name', async () => {
  await expect(bestTilts(pond.base, 'roof')).rejects.toThrow('no array is called "roof"; there are garden pole');
  const flat: Site = {
    ...pond.base,
    arrays: [{ ...pond.base.arrays[0]!, mount: { kind: 'one-axis', axisTilt: 0, axisAzimuth: 180, limit: 60 } }],
  };
  await expect(bestTilts(flat, 'garden pole')).rejects.toThrow('has no tilt to choose');
  await expect(bestTilts(flat)).rejects.toThrow('no tilt to choose');
});

// Two lamps of 20.0 and 20.1 W against one of 4 W: 0.1 W is 0.9 kWh a year, 16 W are 140, 4 h of engine and more.
test('loads that the years do not tell apart are called tied, and neither is called the heaviest', async () => {
  const lamp = (name: string, power: string) => `  - { name: ${name}, power: ${power}, bus: dc }\n`;
  const text = readFileSync(pond.file, 'utf8').replace(
    'loads:\n',
    `loads:\n${lamp('porch', '20 W')}${lamp('gate', '20.1 W')}${lamp('shrine', '4 W')}`,
  );
  const { base: place } = parseSite(text, pond.file);
  const few = { ...place, loads: place.loads.slice(0, 3), events: [], generator: { ...place.generator! } };
  const heavy = { ...few, arrays: [{ ...few.arrays[0]!, strings: 1 }] };
  const several = await weighSite(heavy, { years: 8, workers: 1 });
  const tied = (name: string) => several.loads.find((load) => load.name === name)!.tiedWith;
  expect(tied('porch')).toEqual(['gate']);
  expect(tied('gate')).toEqual(['porch']);
  expect(tied('shrine')).toEqual([]);
  const page = weighText(several, 'metric').replaceAll('\n', ' ');
  expect(page).toMatch(
    /the heaviest load is one of "(porch" and "gate|gate" and "porch)", which these years do not tell apart/,
  );
  expect(page).toMatch(/Not told apart by these years, each from the next: "(porch" and "gate|gate" and "porch)"\./);
});

test('the pages fit 80 columns, whatever the names and sizes', () => {
  expect(weighText(weights, 'metric')).toContain('the heaviest effect is inverter idling');
  const long: SiteWeights = {
    ...weights,
    loads: weights.loads.map((load) => ({
      ...load,
      name: `${load.name} in the far shed behind the pond`,
      standbyKWhYear: 12,
    })),
    base: { ...weights.base, darkKWh: 12_345, generatorHours: 4567, fuelLitres: 12_345 },
  };
  for (const units of ['metric', 'us'] as const) {
    expect(longestLine(weighText(weights, units))).toBeLessThanOrEqual(80);
    expect(longestLine(weighText(long, units))).toBeLessThanOrEqual(80);
  }
  const large = run({ ...pond.base, arrays: [{ ...pond.base.arrays[0]!, strings: 40 }] });
  for (const result of [base, large]) {
    expect(longestLine(lossesText('Kettle Pond honey house', arrayLosses(result)))).toBeLessThanOrEqual(80);
  }
});

test('a place without an engine is weighed in darkness', async () => {
  const { generator, ...rest } = pond.base;
  const dark = await weighSite({ ...rest, loads: rest.loads.slice(0, 2), arrays: [] }, fileYear);
  expect(dark.charger).toBeNull();
  expect(dark.loads[0]!.weight.darkKWh.mean).toBeGreaterThan(0);
  const page = weighText(dark, 'metric');
  expect(page.replaceAll('\n', ' ')).toContain('kWh less stay dark');
  expect(page).not.toContain('starts');
});
