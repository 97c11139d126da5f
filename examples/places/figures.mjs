// The table of the gallery: what each place's design does, and its variants beside it.
// After the build:  node examples/places/figures.mjs    writes it into README.md of this folder.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadSite } from '@wintergap/site';
import { commonAnswer, runDesigns } from '@wintergap/study';
import { PreparedCache, simulateSite } from '@wintergap/year';

const folder = new URL('./', import.meta.url);
const begin = '<!-- figures: begin -->';
const end = '<!-- figures: end -->';

/** File names of the gallery's places, in the order of the alphabet. */
export const places = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

/** The question that a place answers: the first line of its file. */
export function questionOf(place) {
  return readFileSync(new URL(place, folder), 'utf8').split('\n', 1)[0].replace(/^# /, '');
}

/** A place's designs, the base first, each with its name. */
export function designsOf(place) {
  const site = loadSite(fileURLToPath(new URL(place, folder)));
  return [
    { name: 'as it stands', site: site.base },
    ...[...site.variants].map(([name, variant]) => ({ name, site: variant })),
  ];
}

/** What the year of a design's file says, as the table writes it. */
export function yearCells({ array, load, generator, bank }) {
  const whole = (value) => (Math.round(value) || 0).toFixed(0);
  return {
    'array, kW': array.ratedKW.toFixed(1),
    'bank, kWh usable': bank.usableKWh.toFixed(1),
    'load, kWh a day': ((load.acKWh + load.dcKWh) / 365).toFixed(1),
    'engine, h': whole(generator.hours),
    'thrown away': `${whole((100 * array.throttledKWh) / array.availableKWh)} %`,
    'lowest charge': `${whole(100 * bank.minStateOfCharge)} %`,
    'coldest bank': `${whole(bank.minTemp)} degC`,
    'dark, kWh': load.darkKWh < 10 ? load.darkKWh.toFixed(1) : whole(load.darkKWh),
  };
}

/** What 25 common years say of a design. */
export function commonCells({ ranked: { generatorHours } }) {
  return { 'usual, h': generatorHours.usual.value.toFixed(0), 'one in ten, h': generatorHours.oneInTen.value.toFixed(0) };
}

/** The summaries of a place's designs in the year of its file. */
export function summariesOf(designs) {
  const prepared = new PreparedCache();
  return designs.map(({ site }) => simulateSite(site, prepared).summary);
}

async function tableOf(place) {
  const designs = designsOf(place);
  const summaries = summariesOf(designs);
  const common = commonAnswer(await runDesigns(designs, { years: 25 })).designs;
  const rows = designs.map(({ name }, i) => ({ design: name, ...yearCells(summaries[i]), ...commonCells(common[i]) }));
  const line = (cells) => `| ${cells.join(' | ')} |`;
  const columns = Object.keys(rows[0]);
  const rule = columns.map((_, i) => (i === 0 ? '---' : '---:'));
  return [columns, rule, ...rows.map((row) => Object.values(row))].map(line).join('\n');
}

async function table() {
  const parts = [];
  for (const place of places) parts.push(`\n### ${questionOf(place)}\n\n[${place}](${place})\n\n${await tableOf(place)}`);
  return `${parts.join('\n')}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const readme = new URL('README.md', folder);
  const text = readFileSync(readme, 'utf8');
  const made = `${text.slice(0, text.indexOf(begin) + begin.length)}\n${await table()}\n${text.slice(text.indexOf(end))}`;
  writeFileSync(readme, made);
}
