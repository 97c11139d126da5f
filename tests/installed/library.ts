// A typed program as a stranger writes it, compiled and run where only the packages are installed.
import { loadSite, type Site } from '@wintergap/site';
import { runDesigns } from '@wintergap/study';
import { type Ledger, yearSum } from '@wintergap/tally';
import { simulateSite, type YearResult } from '@wintergap/year';

const { base, variants } = loadSite(process.argv[2]!);
const site: Site = base;
const { summary, ledger }: YearResult = simulateSite(site);
const columns: Ledger = ledger;
const { designs } = await runDesigns(
  [{ name: 'base', site }, ...[...variants].map(([name, design]) => ({ name, site: design }))],
  { years: 2, workers: 1 },
);
const served: number = yearSum(columns.acServedWh);
console.log(JSON.stringify({ hours: summary.generator.hours, served, designs: designs.length }));
