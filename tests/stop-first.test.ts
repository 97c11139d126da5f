import { checkText, compareText, headline, problemsFound, withStop } from '@wintergap/report';
import { changedDesign } from '@wintergap/site';
import { commonAnswer, runDesigns } from '@wintergap/study';
import { examineWeather } from '@wintergap/weather';
import {
  exceededLimits,
  limitCautions,
  PreparedCache,
  simulateSite,
  siteLimits,
  type YearResult,
} from '@wintergap/year';
import { expect, test } from 'vitest';
import { honeyHouse } from './honey-house.js';

const site = honeyHouse();
const prepared = new PreparedCache();
// Four of these modules in series pass 150 V on a cold morning.
const longStrings = changedDesign(site, { 'arrays.0.inSeries': 4, 'arrays.0.strings': 2 });
const longAndThin = changedDesign(site, { 'arrays.0.inSeries': 4, 'arrays.0.strings': 3, 'bank.capacity': '1200 Ah' });
const designs = [
  { name: 'base', result: simulateSite(longStrings, prepared) },
  { name: 'short', result: simulateSite(site.base, prepared) },
  { name: 'more', result: simulateSite(longAndThin, prepared) },
];

test('the limits of a design are known without running its year, and are those of the year', () => {
  for (const { result } of designs) expect(siteLimits(result.site, prepared)).toEqual(result.limits);
  expect(exceededLimits(designs[0]!.result.limits).map(({ code }) => code)).toContain('cold-voltage');
  expect(exceededLimits(designs[1]!.result.limits)).toEqual([]);
});

test('what must not be built leads the first lines, in the units shown', () => {
  expect(headline(designs[0]!.result, 'metric')).toMatch(/^STOP, not to be built so: garden pole: [\s\S]*degC/);
  expect(headline(designs[0]!.result, 'us')).toMatch(/^STOP[\s\S]*degF/);
  expect(headline(designs[1]!.result, 'metric')).not.toContain('STOP');
});

test('every answer about a design begins as its year does, and names the limit as its year does', () => {
  const [over, sound] = designs.map(({ result }) => result) as [YearResult, YearResult];
  const stopOfYear = headline(over, 'metric').split('. ')[0]!;
  const page = withStop(siteLimits(over.site, prepared), 'metric', 'The answer.');
  expect(page.startsWith(stopOfYear)).toBe(true);
  expect(page.endsWith('\nThe answer.')).toBe(true);
  expect(withStop(sound.limits, 'metric', 'The answer.')).toBe('The answer.');
  const cautions = limitCautions(siteLimits(over.site, prepared));
  expect(cautions.map(({ code }) => code)).toContain('cold-voltage');
  expect(over.summary.cautions).toEqual(expect.arrayContaining(cautions));
});

test('check prints every STOP of every design, also one that the base has word for word', () => {
  const weather = examineWeather(designs[0]!.result.weather);
  const text = checkText('site.yaml', weather, designs, 'metric');
  expect(text.match(/STOP/g)!.length).toBe(problemsFound(weather, designs) - (weather.verdict === 'rejected' ? 1 : 0));
  expect(text).toContain('as base: STOP garden pole:');
  expect(checkText('site.yaml', weather, designs, 'us')).not.toMatch(/degC|mm2/);
});

test('a comparison never recommends a design over its limits, however little its engine runs', async () => {
  const sites = designs.map(({ name, result }) => ({ name, site: result.site }));
  const run = await runDesigns(sites, { years: 2, workers: 1 });
  const answer = commonAnswer(run, ['base', 'more']);
  expect(answer.leaders).toEqual(['short']);
  const text = compareText(designs, answer, 'metric').replace(/\s+/g, ' ');
  expect(text).toMatch(/^STOP, not to be built so, and not recommended here: "base" \(cold voltage\), "more"/);
  expect(text).toContain('only "short" is within its limits');
});

// A lithium bank of 51.2 V takes 16 cells x 3.55 V, whatever 1.2 times its nominal voltage is.
test('the charging voltage of the check is the absorption voltage of the bank', () => {
  const lithium = changedDesign(site, {
    'bank.chemistry': 'lithium-iron-phosphate',
    'bank.voltage': '51.2 V',
    'bank.absorption': '56.8 V',
    'arrays.0.inSeries': 3,
  });
  const low = siteLimits(lithium, prepared).find(({ code }) => code === 'voltage-too-low')!;
  expect(low.limit).toBeCloseTo(56.8 + 1, 9);
  // Flooded cells are charged lower on a hot day: 2.4 V less 5 mV per K of a day above 25 degC, or more below.
  const flooded = siteLimits(site.base, prepared).find(({ code }) => code === 'voltage-too-low')!;
  expect(Math.abs(flooded.limit - 29.8)).toBeLessThan(0.6);
});
