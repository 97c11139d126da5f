import { checkText, compareText, costText, dayText, lossesText, weatherText, yearText } from '@wintergap/report';
import { readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { commonAnswer, comparedCosts, runDesigns } from '@wintergap/study';
import { examineWeather } from '@wintergap/weather';
import { arrayLosses, PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';

const pathOf = (name: string) => new URL(`../examples/${name}.yaml`, import.meta.url).pathname;

type Pages = Record<string, string>;
const pages = new Map<string, Promise<Pages>>();

/** Every page about an example, made once. */
function pagesOf(name: string): Promise<Pages> {
  const made = pages.get(name) ?? makePages(name);
  pages.set(name, made);
  return made;
}

async function makePages(name: string): Promise<Pages> {
  const path = pathOf(name);
  const site = loadSite(path);
  const prepared = new PreparedCache();
  const designs = [['base', site.base] as const, ...site.variants].map(([design, settings]) => ({
    name: design,
    result: simulateSite(settings, prepared),
  }));
  const { result } = designs[0]!;
  const sites = designs.map((design) => ({ name: design.name, site: design.result.site }));
  const common = commonAnswer(await runDesigns(sites, { years: 3, workers: 1 }));
  const weather = examineWeather(result.weather, {});
  const costs = readCosts(site);
  return {
    year: yearText(result, 'us', common),
    day: dayText(result, 354, 'us'),
    losses: lossesText(result.site.name, arrayLosses(result), 'us'),
    // As the file is named on the command line; a longer path has no place to break at.
    check: checkText(`examples/${name}.yaml`, weather, designs, 'us'),
    compare: compareText(designs, common, 'us'),
    weather: weatherText(weather, 'us'),
    ...(costs && {
      costs: costText(comparedCosts(designs, common, costs), { years: costs.years, currency: 'USD' }, 'us'),
    }),
  };
}

// Litres, degrees Celsius, kilograms and metric areas and flows stand in no page in US units; nor do the codes of cautions.
const metricFigure = /\d (degC|K|kg|m3\/h|cm2|mm2|L)\b/;
const codeBeforeText = /^\s*(note |warning: )?[a-z]+(-[a-z]+)+: /m;

test.each(['kettle-pond', 'controllers', 'everything'])(
  'the pages about %s fit 80 columns, in US units throughout',
  async (name) => {
    for (const [page, text] of Object.entries(await pagesOf(name))) {
      expect(text.replace(/\s+/g, ' '), page).not.toMatch(metricFigure);
      expect(text, page).not.toMatch(codeBeforeText);
      for (const line of text.split('\n')) expect(line.length, `${page}: ${line}`).toBeLessThanOrEqual(80);
    }
  },
);

test('what no variant changes is not tabled', async () => {
  expect((await pagesOf('controllers')).compare).toContain('Array energy offered by month');
  expect((await pagesOf('habits')).compare).not.toContain('Array energy offered by month');
});
