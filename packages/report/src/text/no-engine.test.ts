import { changedDesign, loadSite } from '@wintergap/site';
import { commonAnswer, yearFigures } from '@wintergap/study';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { answerAround } from '../common-answer.fixture.js';
import { yearPage } from '../page/year-page.js';
import { compareText } from './compare.js';
import { commonRivalsText } from './parts/common-rivals.js';
import { headline, yearText } from './year.js';

const site = loadSite(new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname);
const result = simulateSite(changedDesign(site, { generator: undefined }));
const common = answerAround([{ name: 'base', result }]);
const oneLine = (text: string) => text.replaceAll(/\s+/g, ' ');

test('without an engine the year begins with the load that stays dark, in kWh, hours and as a share', () => {
  const { darkKWh } = result.summary.load;
  expect(darkKWh).toBeGreaterThan(1);
  expect(oneLine(headline(result, 'metric'))).toMatch(
    /^[^:]+: [\d.]+ kWh of load stay dark, over [\d.]+ h, [\d.]+ % of the load; there is no generator\./,
  );
});

test('of common years without an engine the usual, the bad and the worst are told', () => {
  expect(oneLine(headline(result, 'metric', common))).toMatch(
    /: [\d.]+ kWh of load stay dark in a usual year, one year in ten [\d.]+ kWh or more, [\d.]+ kWh in the worst \(25 resampled years\); in the year of the file [\d.]+ kWh of load stay dark/,
  );
});

test('the months tell their dark load, on the page too, and nothing of an engine that is not there', () => {
  const text = yearText(result, 'metric');
  expect(text).toMatch(/^ +plane +array +used +thrown +load +dark +lowest$/m);
  expect(yearPage(result, 'metric', {})).toMatch(/>Dark\b/);
});

test('no engine is asked to finish a charge where there is none', () => {
  const { cautions } = result.summary;
  for (const { text } of cautions) expect(text).not.toContain('let the engine');
  expect(cautions.map(({ code }) => code)).toContain('seldom-full');
});

test('designs without an engine are compared without tables of engine hours', () => {
  const designs = [{ name: 'base', result }];
  expect(compareText(designs, common, 'metric')).not.toContain('Engine hours');
});

// Two years of 30 and 40 kWh dark, 35 on the mean; the rival leaves 10 less in each.
test('the rivals of a store are told by dark load where there is no engine', () => {
  const of = (name: string, darkKWh: number[]) => ({
    name,
    years: darkKWh.map((kWh) => ({ ...yearFigures(result), darkKWh: kWh })),
  });
  const weather = { count: 2, kind: 'real', spread: null } as const;
  const designs = [of('as it is', [30, 40]), of('more array', [20, 30])];
  const text = oneLine(commonRivalsText({ common: commonAnswer({ weather, designs }), snow: null }));
  expect(text).toContain('dark load against 35 kWh on the mean: "more array" saves most.');
  expect(text).toContain('more array: 10 kWh less');
});
