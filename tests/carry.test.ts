import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { carryText, commonRivalsText } from '@wintergap/report';
import { type CarryStudy, carrySummary, studyCarry } from '@wintergap/seasonal';
import { parseSite } from '@wintergap/site';
import { commonRivals } from '@wintergap/study';
import { assertCloses, yearSum } from '@wintergap/tally';
import { PreparedCache } from '@wintergap/year';
import { beforeAll, describe, expect, test } from 'vitest';

// Site, weather and every price in this file are invented.
const file = join(import.meta.dirname, '..', 'examples', 'kettle-pond.yaml');
// Only the design: the keys around it are written anew by each test.
const demo = readFileSync(file, 'utf8')
  .split(/^(?=\w)/m)
  .filter((block) => !/^(variants|sweep|size|carry|costs):/.test(block))
  .join('');
const prepared = new PreparedCache(400);
const study = (change: (text: string) => string = (text) => text) =>
  studyCarry(parseSite(change(demo), file), undefined, undefined, prepared);
const withoutEngine = (text: string) => text.replace(/^generator:\n(?: .*\n)*/m, '');
const fewerYears = '\ncarry: { largestArray: 1 }\n';

const costs = (kept: string) => `
costs:
  years: 20
  discount: 3 %
  array: 600 /kW
  bank: 200 /kWh
  engine: { price: 1800, life: 2000 h, service: 0.4 /h }
  fuelEscalation: 1 %
  store: { in: 1500 /kW, kept: ${kept}, out: 2500 /kW, upkeep: 20 /year }
`;

const lastStored = (storedWh: Float64Array, h: number) => storedWh[(h + 8759) % 8760]!;

describe('the demo site with hydrogen', () => {
  let carry: CarryStudy;
  beforeAll(() => {
    carry = study();
  }, 60_000);

  test('year and store are one simulation that closes in every hour', () => {
    const { year, storeYear, judgement } = carry.judged;
    const { ledger } = year.year;
    const { efficiency: efficiencyIn } = judgement.store.converterIn;
    const { efficiency: efficiencyOut } = judgement.store.converterOut;
    assertCloses(ledger);
    expect(judgement.size.closes).toBe(true);
    expect(yearSum(storeYear.givenWh) / 1000).toBeGreaterThan(50);
    let worstWh = 0;
    for (let h = 0; h < 8760; h++) {
      const takenWh = storeYear.takenWh[h]!;
      const givenWh = storeYear.givenWh[h]!;
      const sun = ledger.arrayAvailableWh[h]! - ledger.arrayUsedWh[h]! - takenWh - storeYear.spilledWh[h]!;
      // This store draws no standby, so that all it gives is what the bank's ledger received.
      const given = givenWh + storeYear.unmetWh[h]! - ledger.generatorToBusWh[h]!;
      const content =
        storeYear.storedWh[h]! - lastStored(storeYear.storedWh, h) - takenWh * efficiencyIn + givenWh / efficiencyOut;
      worstWh = Math.max(worstWh, Math.abs(sun), Math.abs(given), Math.abs(content));
    }
    expect(worstWh).toBeLessThan(1e-6);
    expect(yearSum(storeYear.unmetWh)).toBeLessThan(1e-3);
    expect(ledger.darkWh.every((wh) => wh === 0)).toBe(true);
  });

  test('the smallest closing array is bracketed: a little less does not close it, and more closes with a smaller store', () => {
    const { closing, arrays } = carry;
    if (!closing?.closes) throw new Error('the demo site must close');
    const stores = arrays.map(({ judgement }) => judgement.store.store.capacityWh);
    expect(arrays.map(({ scale }) => scale)).toEqual([...arrays.map(({ scale }) => scale)].sort((a, b) => a - b));
    expect(stores).toEqual([...stores].sort((a, b) => b - a));
    expect(closing.scaleWithAllowance / closing.scale).toBeCloseTo(1.2, 9);
    expect(closing.scale).toBeLessThan(1);
  });

  test('a better chain needs a smaller store', () => {
    const stores = carry.technologies.map(({ size }) => size.store.store.capacityWh);
    expect(carry.technologies.map(({ tried }) => tried.name)).toEqual(['low', 'typical', 'high']);
    expect(stores).toEqual([...stores].sort((a, b) => b - a));
  });

  test('over common years each rival is held against the design as it is, year by year, and leaders are ties or one', async () => {
    const rivals = await commonRivals({ ...carry, rivals: carry.rivals.slice(0, 1) }, { years: 2, workers: 1 });
    const { common } = rivals!;
    expect(common.designs.map(({ name }) => name)).toEqual(['as it is', carry.rivals[0]!.name]);
    const [base, rival] = common.designs;
    const saved = base!.generatorHours.mean - rival!.generatorHours.mean;
    expect(rival!.againstBase!.generatorHours.mean).toBeCloseTo(-saved, 9);
    expect(rival!.againstBase!.generatorHours.years).toBe(2);
    const text = commonRivalsText(rivals!);
    expect(text).toContain('over 2 ');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(await commonRivals({ ...carry, rivals: [] })).toBeNull();
  });

  test('rivals are simulated with the engine in place: more array and fewer loads save engine hours', () => {
    const byName = new Map(carry.rivals.map((rival) => [rival.name, rival]));
    const hours = ['array 20 % larger', 'array 50 % larger', 'array 100 % larger'].map(
      (name) => byName.get(name)!.hoursSaved,
    );
    expect(hours[0]).toBeGreaterThan(1);
    expect(hours[2]).toBeGreaterThan(hours[0]!);
    expect(carry.rivals.filter(({ kind }) => kind === 'load')).toHaveLength(4);
    for (const rival of carry.rivals.filter(({ kind }) => kind === 'load'))
      expect(rival.fuelSavedLitres).toBeGreaterThan(5);
    expect(carry.rivals.some(({ kind }) => kind === 'tilt')).toBe(true);
    expect(carry.rivals.some(({ kind }) => kind === 'bank')).toBe(true);
  });

  test('without prices the page speaks of kWh, litres and hours, verdict first, cautions last, within 80 columns', () => {
    for (const units of ['metric', 'us'] as const) {
      const page = carryText(carry, units);
      expect(page).toMatch(/^Kettle Pond honey house\. The store covers the year;/);
      expect(page).not.toMatch(/NaN|undefined|Infinity|null/);
      expect(page.replace(/costs\.\w+/g, '')).not.toMatch(/cost/i);
      expect(Math.max(...page.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
      expect(page.indexOf('Cautions')).toBeGreaterThan(page.indexOf('Other ways'));
      expect(page.slice(page.indexOf('Cautions')).replace(/\s+/g, ' ')).toMatch(/4 to 75 % by volume.*licensed people/);
    }
  });

  test('the JSON document is plain numbers and texts', () => {
    const summary = carrySummary(carry);
    const text = JSON.stringify(summary);
    expect(JSON.parse(text)).toEqual(summary);
    expect(text.length).toBeLessThan(20_000);
    expect(summary).toMatchObject({ verdict: 'no prices', cost: null, engineCost: null, withStoreCost: null });
    expect(summary.asItIs.generatorHours).toBeGreaterThan(10);
  });
});

test('the verdict turns with the price of the store, on the side its break-even price says', () => {
  const cheap = study((text) => text + costs('1 /kWh'));
  const { cost, verdict } = cheap.judged.judgement;
  expect(verdict).toBe('worth it');
  expect(carryText(cheap, 'metric')).toMatch(
    /^Kettle Pond honey house\. Worth it: over 20 years the store\s+costs \d+/,
  );
  expect(cheap.withStoreCost! - cost!.store!.total).toBeGreaterThan(0);
  const dearer = Math.ceil(cost!.breakEvenStorePerKWh! * 1.3 + 5);
  const dear = study((text) => text + costs(`${dearer} /kWh`));
  expect(dear.judged.judgement.verdict).toBe('not worth it');
  expect(dear.judged.judgement.cost!.breakEvenStorePerKWh!).toBeLessThan(dearer);
  const page = carryText(dear, 'metric');
  expect(page.replace(/\s+/g, ' ')).toMatch(/Not worth it: the store covers the year, but over 20 years/);
  expect(page.replace(/\s+/g, ' ')).toMatch(/cost the same with fuel at [\d.]+ per litre \(now 1\.55\)/);
  expect(Math.max(...page.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('a store with standby, minimum load and loss while stored still closes its year', () => {
  const own = study(
    (text) =>
      `${text}\ncarry: { store: { in: { efficiency: 65 %, minimumLoad: 10 %, standby: 10 W }, standing: 0.1 %/day, out: { efficiency: 50 %, standby: 2 W } } }\n`,
  );
  const { storeYear, judgement } = own.judged;
  const { totals } = storeYear;
  const lost = totals.converterInLossWh + totals.standingLossWh + totals.converterOutLossWh;
  expect(judgement.size.closes).toBe(true);
  expect(totals.standbyWh).toBeGreaterThan(10_000);
  expect(totals.standingLossWh).toBeGreaterThan(1000);
  expect(totals.surplusWh + totals.unmetWh).toBeCloseTo(
    totals.demandWh + totals.standbyWh + totals.spilledWh + lost,
    3,
  );
  const leastWh = judgement.store.converterIn.powerW * 0.1;
  let toppedUp = 0;
  for (let h = 0; h < 8760; h++) {
    const takenWh = storeYear.takenWh[h]!;
    if (takenWh === 0 || takenWh >= leastWh * (1 - 1e-9)) continue;
    // Only a full store takes less than the minimum load, for part of an hour.
    expect(storeYear.storedWh[h]! / judgement.store.store.capacityWh).toBeCloseTo(1, 9);
    toppedUp++;
  }
  expect(toppedUp).toBeGreaterThan(0);
  expect(carryText(own, 'metric').replace(/\s+/g, ' ')).toMatch(/standby, [\d.]+ kWh loss while stored/);
});

test('a site whose engine never runs has nothing to retire, in one sentence', () => {
  const oneRadio = 'loads:\n  - { name: radio, power: 14 W, bus: dc }\n';
  const easy = study((text) => text.replace(/^loads:\n(?:[ \n].*\n?)*/m, `${oneRadio}\n`).replace(/^inverter:.*/m, ''));
  const page = carryText(easy, 'metric');
  expect(easy.yearsSimulated).toBe(1);
  expect(page).toMatch(/^Kettle Pond honey house\. Nothing to retire: sun and bank carry this load/);
  expect(page).not.toContain('Cautions');
});

test('a site without an engine is told what a store would do about the dark', () => {
  const dark = study((text) => withoutEngine(text) + fewerYears);
  expect(dark.asItIs.site.generator).toBeUndefined();
  const page = carryText(dark, 'metric').replace(/\s+/g, ' ');
  expect(page).toMatch(/No engine to retire, but \d+ kWh of load a year stay dark, over \d+ h\. A store of \d+ kWh/);
  expect(page).toContain('hold the bank a little above its floor');
});

test('without surplus or without an array there is nothing to carry', () => {
  const small = study(
    (text) =>
      text
        .replace(/strings: \d+/, 'strings: 1')
        .replace('loads:\n', 'loads:\n  - { name: pump, power: 500 W, bus: dc }\n') + fewerYears,
  );
  expect(small.surplusKWh).toBeLessThan(0.5);
  expect(carryText(small, 'metric').replace(/\s+/g, ' ')).toMatch(
    /Nothing to carry: bank and load take all that this array gives, in summer too\. .* Not even 1 times this array/,
  );
  const none = study((text) => text.replace(/strings: \d+/, 'strings: 0'));
  expect(carryText(none, 'metric')).toContain('Nothing to carry: this design has no array.');
  expect(none.closing).toBeNull();
});
