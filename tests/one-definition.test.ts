import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ledgerCsv, yearHtml, yearText } from '@wintergap/report';
import { loadSite } from '@wintergap/site';
import { contractOf } from '@wintergap/tally';
import { arrayLosses, bankFacts, simulateSite } from '@wintergap/year';
import { parseHTML } from 'linkedom';
import Papa from 'papaparse';
import { expect, test } from 'vitest';

const folder = join(import.meta.dirname, '../examples');
const sites = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

/** Thousands stand apart by a space; minus and dash are typographic in the page. */
const numberOf = (text: string) =>
  Number(
    text
      .replace(/ (?=\d{3})/g, '')
      .replace('−', '-')
      .replace(/^[-–]$/, '0'),
  );

test.each(sites)('%s: text, JSON, CSV, HTML and the chain of losses tell the same figures', async (name) => {
  const result = simulateSite(loadSite(join(folder, name)).base);
  const { array, generator, throttle, load } = contractOf(result.summary);
  const text = yearText(result, 'metric').replace(/\n +/g, ' ');
  const html = parseHTML(await yearHtml(result, 'metric')).document;
  const csv = Papa.parse<Record<string, number>>(ledgerCsv(result.ledger), { header: true, dynamicTyping: true }).data;
  const csvSum = (column: string) => csv.reduce((sum, row) => sum + (row[column] ?? 0), 0);
  const inText = (pattern: RegExp) => numberOf(pattern.exec(text)![1]!);
  const monthsTable = [...html.querySelectorAll('[aria-labelledby="months"] tbody tr')].at(-1)!;
  const heads = [...html.querySelectorAll('[aria-labelledby="months"] thead th')].map((head) => head.textContent!);
  const cells = [...monthsTable.querySelectorAll('td, th')].map((cell) => cell.textContent!.trim());
  const inHtml = (head: string) => numberOf(cells[heads.findIndex((one) => one.startsWith(head))]!);

  const offered = { json: array.availableKWh, csv: csvSum('array available [kWh]') };
  expect(offered.csv).toBeCloseTo(offered.json, 6);
  expect(Math.abs(inText(/used of ([\d ]+(?:\.\d+)?) offered/) - offered.json)).toBeLessThanOrEqual(0.51);
  expect(Math.abs(inHtml('Array offered') - offered.json)).toBeLessThanOrEqual(0.51);
  const chain = arrayLosses(result).flatMap((one) => one.chain.losses);
  const lost = (loss: string) =>
    chain.filter((line) => line.name === loss).reduce((sum, { kWh }) => sum + kWh.reduce((a, b) => a + b, 0), 0);
  expect(lost('throttled')).toBeCloseTo(throttle.kWh, 5);
  expect(lost('current limit')).toBeCloseTo(csvSum('clipped [kWh]'), 5);
  expect(array.usedKWh + throttle.kWh).toBeCloseTo(array.availableKWh, 6);

  expect(csvSum('generator to bus [kWh]')).toBeCloseTo(generator.toBusKWh, 6);
  expect(Math.abs(inText(/engine ([\d ]+(?:\.\d+)?) kWh/) - generator.toBusKWh)).toBeLessThanOrEqual(0.51);
  expect(Math.abs(inHtml('Engine gave') - generator.toBusKWh)).toBeLessThanOrEqual(0.51);

  const outdoors = `${Math.round(bankFacts(result).coldest.outdoorLowestC)} degC outdoors that day`;
  expect(text).toContain(outdoors);
  // The page sets a minus sign and spaces that do not break.
  const pageText = html.body.textContent!.replaceAll('−', '-').replace(/\s/g, ' ');
  expect(pageText).toContain(outdoors);

  const facts = html.querySelector('.facts')!.textContent!.replace(/\s+/g, ' ');
  const when = /charger throttles ((?:at|between|on) [^:.]*)/.exec(text)?.[1];
  if (when) expect(facts).toContain(when.replace(/\s+/g, ' '));
  expect(csvSum('dark [kWh]')).toBeCloseTo(load.darkKWh, 6);
  expect(text).not.toMatch(/\b0 kWh of load|over 0 h/);
});
