import { join } from 'node:path';
import { readCosts } from '@wintergap/seasonal';
import { loadSite, type Site } from '@wintergap/site';
import { bankAir, bankFacts, simulateSite, type YearResult } from '@wintergap/year';
import { expect, test } from 'vitest';
import type { DesignOutcome } from '../outcome.js';
import type { YearFigures } from '../year-figures.js';
import { cabinetChoices, cabinetTrials } from './cabinet-weights.js';

const site = loadSite(join(import.meta.dirname, '../../../../examples/kettle-pond.yaml'));
const own = simulateSite(site.base);
const foam = site.base.bank.cabinet!;
type Cabinet = NonNullable<Site['bank']['cabinet']>;

const yearWith = (cabinet: Partial<Cabinet> | null): YearResult => {
  const bank = { ...own.site.bank, cabinet: cabinet && { ...foam, ...cabinet } };
  return { ...own, site: { ...own.site, bank } } as YearResult;
};
const trials = (cabinet: Partial<Cabinet> | null) => cabinetTrials(yearWith(cabinet));
const names = (cabinet: Partial<Cabinet> | null) => trials(cabinet).map(({ id }) => id.replace('cabinet ', ''));
const changed = (cabinet: Partial<Cabinet>, name: string) =>
  trials(cabinet).find(({ id }) => id === `cabinet ${name}`)!.site.bank.cabinet!;

test('a box of foam is tried with more of it, with half its loss and with half the foam', () => {
  const wall = { foam: 0.05, area: 3 } as Exclude<Cabinet['insulation'], number>;
  const insulation = (name: string) => changed({ insulation: wall }, name).insulation;
  expect(insulation('2 inches more foam')).toMatchObject({ foam: expect.closeTo(0.1008, 9), area: 3 });
  expect(insulation('half the heat loss')).toMatchObject({ foam: 0.05, area: 1.5 });
  expect(insulation('half the foam')).toMatchObject({ foam: 0.025, area: 3 });
});

test('a box told by its heat loss is tried with half and with twice as much', () => {
  expect(changed({ insulation: 2 }, 'half the heat loss').insulation).toBe(1);
  expect(changed({ insulation: 2 }, 'twice the heat loss').insulation).toBe(4);
});

test('a box is tried with the air that its gas needs where it has less, and without its heat where it has any', () => {
  const needed = bankAir(own)!.neededWPerK;
  expect(needed).toBeGreaterThan(0);
  expect(changed({ ventilation: needed / 2 }, 'ventilated for gas').ventilation).toBe(needed);
  expect(names({ ventilation: needed, heatedBy: 'none' })).toEqual([
    '2 inches more foam',
    'half the heat loss',
    'half the foam',
  ]);
  const room = { kind: 'room', temperature: 20, coupling: 1 } as Cabinet['heatedBy'];
  const heater = { kind: 'heater', power: 50, below: 5 } as unknown as Cabinet['heatedBy'];
  expect(changed({ heatedBy: room }, 'without the warm room').heatedBy).toBe('none');
  expect(changed({ heatedBy: heater }, 'without the heater').heatedBy).toBe('none');
  expect(names({ heatedBy: 'none' }).join()).not.toContain('without');
});

test('cells that make no gas need no air against it', () => {
  const { settings, refAh } = own.plant.bank;
  const { defaults } = settings;
  const none = { ...defaults, traits: { ...defaults.traits, gas: 'none' } };
  const sealed = { settings: { ...settings, defaults: none }, refAh };
  const lithium = { ...yearWith({ ventilation: 0 }), plant: { ...own.plant, bank: sealed } } as unknown as YearResult;
  expect(bankAir(lithium)).toBeNull();
  expect(cabinetTrials(lithium).map(({ id }) => id)).not.toContain('cabinet ventilated for gas');
  expect(cabinetTrials(lithium).length).toBeGreaterThan(2);
});

test('a bank that stands in the heated rooms has no box to change', () => {
  expect(trials(null)).toEqual([]);
  expect(cabinetChoices({ own: yearWith(null), common: [] }, () => ({ own, common: [] }), null)).toBeNull();
});

const outcome = (year: YearResult, hours: number): DesignOutcome => ({
  own: year,
  common: [hours, hours].map(
    (generatorHours) => ({ generatorHours, starts: 1, fuelLitres: 2, darkKWh: 0 }) as YearFigures,
  ),
});

test('the box as designed comes first, and the others say what they have more', () => {
  const choices = cabinetChoices(outcome(own, 40), () => outcome(own, 30), readCosts(site))!;
  expect(choices.map(({ name }) => name)).toEqual(['as designed', ...names({})]);
  expect(choices[0]!.difference).toBeNull();
  expect(choices.slice(1).every(({ difference }) => difference!.generatorHours.mean === -10)).toBe(true);
  expect([choices[0]!.outcome.generatorHours, choices[1]!.outcome.generatorHours]).toEqual([40, 30]);
});

// 24 kWh at 180 are 4320.
test('each box has the coldest and warmest hour of its bank, its years, and what they cost a year', () => {
  const [designed] = cabinetChoices(outcome(own, 40), () => outcome(own, 30), readCosts(site))!;
  const years = bankFacts(own).wear.yearsTo80;
  expect(designed!.bankYears).toBe(years);
  expect(designed!.wearPerYear).toBeCloseTo(4320 / years, 6);
  expect(designed!.coldestBankC).toBeCloseTo(Math.min(...own.ledger.bankC), 1);
  expect(designed!.warmestBankC).toBeCloseTo(Math.max(...own.ledger.bankC), 1);
  const [priceless] = cabinetChoices(outcome(own, 40), () => outcome(own, 30), null)!;
  expect(priceless!.wearPerYear).toBeNull();
});

test('a heater draws what the own use has beyond that of the electronics', () => {
  const ownUseWh = own.ledger.ownUseWh.map((wh) => wh + 10);
  const heater = { ...own.plant, heater: {} } as unknown as YearResult['plant'];
  const drawn = (year: YearResult) => cabinetChoices(outcome(year, 4), () => outcome(year, 4), null)![0]!.heaterKWh;
  const without = own.ledger.ownUseWh.reduce((sum, wh, h) => sum + wh - own.plant.ownUseW[h]!, 0) / 1000;
  // Ten watt-hours in each of 8760 hours.
  expect(drawn({ ...own, plant: heater, ledger: { ...own.ledger, ownUseWh } })).toBeCloseTo(without + 87.6, 6);
  expect(drawn({ ...own, ledger: { ...own.ledger, ownUseWh } })).toBe(0);
  const less = own.plant.ownUseW.map((watts) => watts / 2);
  expect(drawn({ ...own, plant: heater, ledger: { ...own.ledger, ownUseWh: less } })).toBe(0);
});
