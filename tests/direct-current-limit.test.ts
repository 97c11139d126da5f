import { join } from 'node:path';
import { changedDesign, loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';

const site = loadSite(join(import.meta.dirname, '../examples/controllers.yaml'));

test('a direct controller gives no more than its current limit', () => {
  const { ledger } = simulateSite(
    changedDesign(site, { 'arrays.0.strings': 10, 'arrays.0.controller.maxCurrent': '20 A' }),
  );
  for (let h = 0; h < 8760; h++) expect(ledger.arrayAvailableWh[h]).toBeLessThanOrEqual(20 * 1.01 * ledger.bankV[h]!);
});
