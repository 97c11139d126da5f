// A typed program as a stranger writes it, compiled and run where only the packages are installed.
import { buildSite, loadSite, type Site, type SiteInput } from '@wintergap/site';
import { runDesigns } from '@wintergap/study';
import { type Ledger, ledgerColumn, yearSum } from '@wintergap/tally';
import { simulateSite, type YearResult } from '@wintergap/year';

const { base, variants } = loadSite(process.argv[2]!);
const site: Site = base;
const { summary, ledger }: YearResult = simulateSite(site);
const columns: Ledger = ledger;
const unit: string = ledgerColumn(columns, 'fuelL').unit;

const bank: SiteInput['bank'] = { chemistry: 'agm', voltage: '12 V', capacity: '2.4 kWh' };
// @ts-expect-error editors know the keys of a site in code too
const mistyped: SiteInput['bank'] = { chemistry: 'agm', voltage: '12 V', capacity: '200 Ah', flote: '13.5 V' };
const place: SiteInput['place'] = { latitude: 61.2, longitude: 24.4, utcOffset: '2 h' };
const built = buildSite({ name: 'Shore cabin', place, weather: 'none.csv', arrays: [], bank });
const { designs } = await runDesigns(
  [{ name: 'base', site }, ...[...variants].map(([name, design]) => ({ name, site: design }))],
  { years: 2, workers: 1 },
);
const served: number = yearSum(columns.acServedWh);
console.log(
  JSON.stringify({
    hours: summary.generator.hours,
    served,
    designs: designs.length,
    unit,
    ah: built.base.bank.capacity,
    mistyped,
  }),
);
