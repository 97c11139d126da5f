import { checkText, compareText, costText, dayText, lossesText, weatherText, yearText } from '@wintergap/report';
import { lifeCycleOfYear, readCosts } from '@wintergap/seasonal';
import { loadSite } from '@wintergap/site';
import { examineWeather } from '@wintergap/weather';
import { arrayLosses, PreparedCache, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';

const pathOf = (name: string) => new URL(`../examples/${name}.yaml`, import.meta.url).pathname;

function pagesOf(name: string): Record<string, string> {
  const path = pathOf(name);
  const site = loadSite(path);
  const prepared = new PreparedCache();
  const designs = [['base', site.base] as const, ...site.variants].map(([design, settings]) => ({
    name: design,
    result: simulateSite(settings, prepared),
  }));
  const { result } = designs[0]!;
  const weather = examineWeather(result.weather, {});
  const costs = readCosts(site);
  const priced = costs
    ? designs.map((design) => ({ name: design.name, cost: lifeCycleOfYear(design.result, costs) }))
    : [];
  return {
    year: yearText(result, 'us'),
    day: dayText(result, 354, 'us'),
    losses: lossesText(result.site.name, arrayLosses(result)),
    // As the file is named on the command line; a longer path has no place to break at.
    check: checkText(`examples/${name}.yaml`, weather, designs),
    compare: compareText(designs, 'us'),
    weather: weatherText(weather, 'us'),
    ...(costs && { costs: costText(priced, costs.years) }),
  };
}

test.each(['kettle-pond', 'controllers', 'everything'])('the pages about %s fit 80 columns', (name) => {
  for (const [page, text] of Object.entries(pagesOf(name))) {
    for (const line of text.split('\n')) expect(line.length, `${page}: ${line}`).toBeLessThanOrEqual(80);
  }
});

test('what no variant changes is not tabled', () => {
  expect(pagesOf('controllers').compare).toContain('Array energy offered by month');
  expect(pagesOf('habits').compare).not.toContain('Array energy offered by month');
});
