import { join } from 'node:path';
import { hoursPerYear } from '@wintergap/ground';
import { loadSite, type Site } from '@wintergap/site';
import { simulateSite, type YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { reasonRuns, variantReasons } from './variant-reasons.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const own = simulateSite(site.base);
const hourly = (value: number) => new Float64Array(hoursPerYear).fill(value);

interface Figures {
  hours: number;
  litres: number;
  offered: number;
  bankLoss: number;
  idle: number;
}
/** A year of these engine hours, all in January, and of so many watt-hours in every hour. */
function yearOf(name: string, { hours, litres, offered, bankLoss, idle }: Figures): YearResult {
  const months = own.summary.generator.months.map((month, m) => ({ ...month, hours: m === 0 ? hours : 0 }));
  return {
    ...own,
    site: { ...own.site, name },
    summary: { ...own.summary, generator: { ...own.summary.generator, hours, fuelLitres: litres, months } },
    ledger: {
      ...own.ledger,
      darkWh: hourly(0),
      arrayAvailableWh: hourly(offered),
      arrayUsedWh: hourly(offered / 2),
      bankLossWh: hourly(bankLoss),
      selfDischargeWh: hourly(1),
      inverterLossWh: hourly(idle),
      converterLossWh: hourly(2),
      chargerLossWh: hourly(3),
      ownUseWh: hourly(4),
    },
  };
}

const asTheyAre = {
  base: { hours: 10, litres: 20, offered: 100, bankLoss: 10, idle: 20 },
  variant: { hours: 16, litres: 30, offered: 90, bankLoss: 12, idle: 20 },
};
/** What both come to without an effect: by trees, by the bank's cold, and by an idling inverter. */
function rerun(of: Site): YearResult {
  const name = of.name as 'base' | 'variant';
  const isBase = name === 'base';
  const figures = asTheyAre[name];
  if (of.skyline.length === 0)
    return yearOf(name, { ...figures, hours: isBase ? 9 : 11, litres: isBase ? 18 : 21, offered: isBase ? 105 : 103 });
  if (of.bank.cabinet?.ventilation === 0 && of.bank.cabinet.heatedBy !== 'none')
    return yearOf(name, { ...figures, hours: isBase ? 8 : 13, litres: isBase ? 16 : 25, bankLoss: isBase ? 5 : 3 });
  if (of.inverter?.search) return yearOf(name, { ...figures, hours: isBase ? 9 : 14, idle: isBase ? 10 : 15 });
  return yearOf(name, figures);
}
const base = { name: 'base', result: yearOf('base', asTheyAre.base) };
const variant = { name: 'other', result: yearOf('variant', asTheyAre.variant) };

// January has 744 h. Trees take 13 Wh of the variant and 5 of the base: 8 x 744 = 5.952 kWh; without them the variant runs 2 h
// more instead of 6. The bank's cold takes 9 and 5 Wh: 2.976 kWh, and 1 h of the 6. An inverter that idles takes less from the
// variant than from the base, so it is no reason for hours that the variant has more.
test('a reason takes more energy from the design whose engine runs longer, and the hours that it explains are gone without it', () => {
  const [reasons] = variantReasons([base, variant], rerun);
  expect(reasons).toMatchObject({ variant: 'other', generatorHours: 6, fuelLitres: 10 });
  expect(reasons!.effects).toEqual([
    { name: 'skyline', takenKWh: expect.closeTo(5.952, 9), generatorHours: 4, fuelLitres: 7 },
    { name: 'cold or hot bank', takenKWh: expect.closeTo(2.976, 9), generatorHours: 1, fuelLitres: 1 },
  ]);
  expect(reasons!.restHours).toBe(1);
});

test('where the variant runs less, its reasons take energy from the base', () => {
  const [reasons] = variantReasons([variant, base], rerun);
  expect(reasons!.effects.map(({ name, takenKWh, generatorHours }) => [name, takenKWh, generatorHours])).toEqual([
    ['skyline', expect.closeTo(-5.952, 9), -4],
    ['cold or hot bank', expect.closeTo(-2.976, 9), -1],
  ]);
  expect(reasons!.restHours).toBe(-1);
});

// 10 Wh less in each of 744 h are 7.44 kWh less, of which a half was used; the bank loses 2 Wh more: 1.488 kWh.
test('energies are those of the lean months, the variant less the base', () => {
  const [{ energy }] = variantReasons([base, variant], rerun) as [ReturnType<typeof variantReasons>[number]];
  expect(energy).toMatchObject({
    months: [1],
    arrayOfferedKWh: expect.closeTo(-7.44, 9),
    arrayUsedKWh: expect.closeTo(-3.72, 9),
    lostKWh: expect.closeTo(1.488, 9),
    loadKWh: 0,
  });
  const load = {
    ...variant.result.load,
    acW: own.load.acW.map((watts) => watts + 5),
    dcW: own.load.dcW.map((watts) => watts + 1),
  };
  const [more] = variantReasons([base, { name: 'other', result: { ...variant.result, load } }], rerun);
  expect(more!.energy.loadKWh).toBeCloseTo(6 * 0.744, 9);
});

test('each effect is left out of the base once and of every variant, as often as was told beforehand', () => {
  let runs = 0;
  const counted = (of: Site) => {
    runs++;
    return rerun(of);
  };
  const designs = [base, variant, { ...variant, name: 'third' }] as const;
  variantReasons(designs, counted);
  expect(runs).toBe(reasonRuns(designs));
  expect(reasonRuns([base])).toBe(0);
  // Each variant adds its own runs, and the base those of every effect once.
  expect(reasonRuns(designs)).toBe(3 * (reasonRuns([base, variant]) / 2));
});

test('light and losses of the chain add up to what the array offers more', () => {
  const fixed = simulateSite(site.variants.get('fixed')!);
  const same = (of: Site) => (of.arrays[0]!.mount.kind === 'fixed' ? fixed : own);
  const [reasons] = variantReasons(
    [
      { name: 'base', result: own },
      { name: 'fixed', result: fixed },
    ],
    same,
  );
  const { arrayParts, arrayOfferedKWh } = reasons!.energy;
  expect(arrayParts.reduce((sum, { kWh }) => sum + kWh, 0)).toBeCloseTo(arrayOfferedKWh, 6);
  // A plane that stands still has less light than one that follows the sun.
  expect(arrayParts.find(({ name }) => name === 'plane')!.kWh).toBeLessThan(-10);
  expect(reasons!.effects).toEqual([]);
  expect(reasons!.restHours).toBe(reasons!.generatorHours);
});
