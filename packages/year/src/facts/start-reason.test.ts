import type { GeneratorSettings } from '@wintergap/generator';
import { expect, test } from 'vitest';
import { petrolSet } from '../loop/plant.fixture.js';
import { startReason } from './start-reason.js';
import { quietYear } from './year.fixture.js';

const noon = 100 * 24 + 12;
/** A start below 45 %. */
const yearWith = (parts: Partial<GeneratorSettings>) => quietYear({ generator: { ...petrolSet, ...parts } });

test('a start at its charge is by the charge, to a millionth of it', () => {
  const year = yearWith({});
  const reasonAt = (charge: number) => {
    year.ledger.lowestStateOfCharge[noon] = charge;
    return startReason(year, noon);
  };
  expect(reasonAt(0.4)).toBe('the charge was down to 45 %');
  expect(reasonAt(0.45 + 5e-7)).toBe('the charge was down to 45 %');
  expect(reasonAt(0.45 + 2e-6)).toBe('sun and bank could not carry the load');
});

test('an exercise run is named on its day, but the charge comes first', () => {
  const year = yearWith({ exercise: { everyDays: 30, minutes: 15 } });
  const due = year.plant.generator!.exerciseAt.indexOf(1);
  expect(startReason(year, due)).toBe('an exercise run was due');
  expect(startReason(year, due + 1)).toBe('sun and bank could not carry the load');
  year.ledger.lowestStateOfCharge[due] = 0.45;
  expect(startReason(year, due)).toBe('the charge was down to 45 %');
});

// Chargers count a day more at midnight: thirteen days as the day before ended are fourteen on this one.
test('a bank that was not full for as many days as the rule says is the reason on the day they are over', () => {
  const year = yearWith({ fullEveryDays: 14 });
  const reasonAfter = (days: number) => {
    year.ledger.daysSinceFull.fill(0);
    year.ledger.daysSinceFull[99 * 24 + 23] = days;
    return startReason(year, noon);
  };
  expect(reasonAfter(13)).toBe('the bank was not full for 14 days');
  expect(reasonAfter(12)).toBe('sun and bank could not carry the load');
  year.ledger.daysSinceFull[0] = 13;
  expect(startReason(year, 5)).toBe('the bank was not full for 14 days');
  const without = yearWith({});
  without.ledger.daysSinceFull.fill(30);
  expect(startReason(without, noon)).toBe('sun and bank could not carry the load');
});

test('with a starting voltage it is that or the load; without an engine there is none', () => {
  const start = [{ kind: 'voltage', belowV: 23.5, forMin: 5 }] as const;
  expect(startReason(yearWith({ start }), noon)).toBe('the bank was below 23.5 V, or could not carry the load');
  expect(startReason(quietYear(), noon)).toBe('');
});
