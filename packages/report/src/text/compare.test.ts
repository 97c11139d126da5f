import { fileURLToPath } from 'node:url';
import { designOf, loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { answerAround } from '../common-answer.fixture.js';
import { compareText } from './compare.js';

const site = loadSite(fileURLToPath(new URL('../../../../examples/kettle-pond.yaml', import.meta.url)));
const base = simulateSite(site.base);
const fixed = simulateSite(designOf(site, 'fixed'));
const withCautions = (result: typeof base, cautions: { code: string; text: string }[]) => ({
  ...result,
  summary: { ...result.summary, cautions },
});

const shared = { code: 'seldom-full', text: 'the bank is not charged full for 45 days' };
const own = { code: 'hot-bank', text: 'the bank is at 50 degC' };

test('cautions stand beside the answer, each once with the names of its designs', () => {
  const designs = [
    { name: 'base', result: withCautions(base, [shared]) },
    { name: 'fixed', result: withCautions(fixed, [shared, own]) },
  ];
  const text = compareText(designs, answerAround(designs), 'us');
  const cautions = /Cautions\n((?:.+\n)+)/.exec(text)![1]!;
  expect(cautions).toBe('all designs: the bank is not charged full for 45 days\nfixed: the bank is at 122 degF\n');
  expect(text.indexOf('Cautions')).toBeLessThan(text.indexOf('Engine hours a year'));
});

test('where no year raised a caution none is spoken of', () => {
  const designs = [
    { name: 'base', result: withCautions(base, []) },
    { name: 'fixed', result: withCautions(fixed, []) },
  ];
  expect(compareText(designs, answerAround(designs), 'metric')).not.toContain('Cautions');
});
