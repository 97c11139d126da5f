import { expect, test } from 'vitest';
import { ledgerColumn } from './column.js';
import { createLedger, ledgerColumns } from './ledger.js';

test('a column is read by its name, with its unit and its side of the balance', () => {
  const ledger = createLedger();
  ledger.generatorWh[5] = 700;
  expect(ledgerColumn(ledger, 'generatorWh')).toMatchObject({ unit: 'Wh', side: 'in' });
  expect(ledgerColumn(ledger, 'generatorWh').values[5]).toBe(700);
  const units = Object.fromEntries(ledgerColumns.map((name) => [name, ledgerColumn(ledger, name).unit]));
  expect(units).toMatchObject({ bankC: 'degC', bankV: 'V', generatorH: 'h', fuelL: 'L', gassingAh: 'Ah', darkH: 'h' });
  // Shares and counts alone have none.
  expect(ledgerColumns.filter((name) => units[name] === '')).toEqual([
    'stateOfCharge',
    'lowestStateOfCharge',
    'starts',
  ]);
  expect(ledgerColumn(ledger, 'bankStoredWh').side).toBe('state');
});

test('a name that is no column is told with those that are', () => {
  expect(() => ledgerColumn(createLedger(), 'loadWh')).toThrow(
    /no column is called "loadWh"; the ledger has .*acServedWh/,
  );
});
