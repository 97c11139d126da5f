import { join } from 'node:path';
import { hoursPerYear } from '@wintergap/ground';
import { loadSite, type Site } from '@wintergap/site';
import { simulateSite, type YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import { presentEffects } from '../weigh/effect-weights.js';
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
/** A year of these engine hours, all in February, and of so many watt-hours in every hour. */
function yearOf(name: string, { hours, litres, offered, bankLoss, idle }: Figures): YearResult {
  const months = own.summary.generator.months.map((month, m) => ({ ...month, hours: m === 1 ? hours : 0 }));
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
  variant: { hours: 16, litres: 30, offered: 90, bankLoss: 12, idle: 40 },
};
/** What both come to without an effect: trees, the bank's cold, an idling inverter, dirt, or glass. */
function rerun(of: Site): YearResult {
  const name = of.name as 'base' | 'variant';
  const figures = asTheyAre[name];
  const less = (forBase: Partial<Figures>, forVariant: Partial<Figures>) =>
    yearOf(name, { ...figures, ...(name === 'base' ? forBase : forVariant) });
  if (of.skyline.length === 0)
    return less({ hours: 9, litres: 18, offered: 105 }, { hours: 14, litres: 21, offered: 103 });
  if (of.bank.cabinet?.ventilation === 0 && of.bank.cabinet.heatedBy !== 'none')
    return less({ hours: 8, litres: 16, bankLoss: 5 }, { hours: 10, litres: 25, bankLoss: 3 });
  if (of.inverter?.search) return less({ hours: 9, idle: 10 }, { hours: 12, idle: 20 });
  if (of.arrays[0]!.losses.soiling === 0) return less({ hours: 9, offered: 110 }, { hours: 14, offered: 92 });
  if (!of.arrays[0]!.losses.glass) return less({}, { offered: 95 });
  return yearOf(name, figures);
}
const base = { name: 'base', result: yearOf('base', asTheyAre.base) };
const variant = { name: 'other', result: yearOf('variant', asTheyAre.variant) };

// February has 672 h. Trees take 13 Wh of the variant and 5 of the base: 8 x 672 = 5.376 kWh, and without them it runs 5 h more
// instead of 6. The bank's cold takes 9 and 5 Wh, 2.688 kWh, and 4 of the 6 h; an idling inverter 20 and 10 Wh, 6.72 kWh, and
// 3 of the 6 h. Dirt takes less from the variant than from the base, so it is no reason for hours that the variant has more;
// glass takes more from it, and explains no hours.
test('a reason takes more energy from the design whose engine runs longer, and the hours it explains are gone without it', () => {
  const [reasons] = variantReasons([base, variant], rerun);
  expect(reasons).toMatchObject({ variant: 'other', generatorHours: 6, fuelLitres: 10 });
  expect(reasons!.effects).toEqual([
    { name: 'cold or hot bank', takenKWh: expect.closeTo(2.688, 9), generatorHours: 4, fuelLitres: 1 },
    { name: 'inverter idling', takenKWh: expect.closeTo(6.72, 9), generatorHours: 3, fuelLitres: 0 },
    { name: 'skyline', takenKWh: expect.closeTo(5.376, 9), generatorHours: 1, fuelLitres: 7 },
  ]);
  expect(reasons!.restHours).toBe(-2);
});

test('where the variant runs less, its reasons take energy from the base', () => {
  const [reasons] = variantReasons([variant, base], rerun);
  expect(reasons!.effects.map(({ name, takenKWh, generatorHours }) => [name, takenKWh, generatorHours])).toEqual([
    ['cold or hot bank', expect.closeTo(-2.688, 9), -4],
    ['inverter idling', expect.closeTo(-6.72, 9), -3],
    ['skyline', expect.closeTo(-5.376, 9), -1],
  ]);
  expect(reasons!.restHours).toBe(2);
});

// 10 Wh less in each of 672 h are 6.72 kWh less, of which a half was used; bank and inverter lose 2 and 20 Wh more: 14.784 kWh.
test('energies are those of the lean months, the variant less the base', () => {
  const [reasons] = variantReasons([base, variant], rerun);
  expect(reasons!.energy).toMatchObject({
    months: [2],
    arrayOfferedKWh: expect.closeTo(-6.72, 9),
    arrayUsedKWh: expect.closeTo(-3.36, 9),
    lostKWh: expect.closeTo(14.784, 9),
    loadKWh: 0,
  });
  const { acW, dcW } = own.load;
  const load = { ...own.load, acW: acW.map((watts) => watts + 5), dcW: dcW.map((watts) => watts + 1) };
  const [more] = variantReasons([base, { name: 'other', result: { ...variant.result, load } }], rerun);
  expect(more!.energy.loadKWh).toBeCloseTo(6 * 0.672, 9);
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
  expect(runs).toBe(3 * presentEffects(own).length);
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
