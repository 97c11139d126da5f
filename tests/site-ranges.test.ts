import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import { parseSite, SiteError, type SiteProblem } from '../packages/site/src/index.js';

// Every range belongs to the site file's schema: a number out of bounds is told where it stands, under its own key, with
// all other problems, and never by a name of the program's inside after weather and sun have been worked out.

const folder = new URL('../examples/', import.meta.url);
const file = new URL('everything.yaml', folder).pathname;
const example = readFileSync(file, 'utf8');

interface Written {
  path: string;
  from: number;
  to: number;
  text: string;
  line: number;
}

/** Every number, with unit or without, that stands in the base design. */
function numbersIn(text: string): Written[] {
  const found: Written[] = [];
  const visit = (node: unknown, path: string) => {
    if (isMap(node)) {
      for (const { key, value } of node.items) {
        const name = String((key as Node & { value: unknown }).value);
        // The other prices are read with their section.
        const elsewhere = path === 'costs' ? name !== 'extra' : path === '' && name === 'variants';
        if (!elsewhere) visit(value, path === '' ? name : `${path}.${name}`);
      }
    } else if (isSeq(node)) for (const [i, item] of node.items.entries()) visit(item, `${path}[${i}]`);
    else if (isScalar(node) && node.range && /^[+-]?\d+(\.\d+)?( \S.*)?$/.test(String(node.source))) {
      const [from, to] = node.range;
      found.push({ path, from, to, text: text.slice(from, to), line: text.slice(0, from).split('\n').length });
    }
  };
  visit(parseDocument(text).contents, '');
  return found;
}

const numbers = numbersIn(example);

/** Problems of a site file's text. */
function problemsOf(text: string): readonly SiteProblem[] {
  try {
    parseSite(text, file);
    return [];
  } catch (error) {
    if (!(error instanceof SiteError)) throw error;
    return error.problems;
  }
}

test('the example is right, and has numbers of every section', () => {
  expect(problemsOf(example)).toEqual([]);
  const sections = new Set(numbers.map(({ path }) => /^\w+/.exec(path)![0]));
  const all =
    'place weather ground skyline horizon snow rooms arrays bank inverter converter loads measuredLoad events generator';
  expect([...sections]).toEqual(expect.arrayContaining(all.split(' ')));
  expect(numbers.length).toBeGreaterThan(200);
});

for (const number of ['1e12', '-1e12']) {
  test(`${number} for every number of a site file is told for each, at its place and under its key`, () => {
    let text = example;
    for (const { from, to, text: written } of numbers.toReversed()) {
      text = text.slice(0, from) + written.replace(/^[+-]?[\d.]+/, number) + text.slice(to);
    }
    const problems = problemsOf(text);
    const told = new Set(problems.map(({ path, line }) => `${line} ${path}`));
    expect(numbers.map(({ line, path }) => `${line} ${path}`).filter((place) => !told.has(place))).toEqual([]);
    // Names of the program's inside end in a unit and begin small: capacityAh, vocV, minutesPerDay.
    for (const { message } of problems) expect(message).not.toMatch(/\b[a-z]+[A-Z]\w* must be/);
  });
}

test('what has to fit between keys of an inverter, and the age of a bank, is told under the key', () => {
  for (const [written, instead, message] of [
    ['surge: 9 kW', 'surge: 3 kW', 'inverter.surge: found 3000 W, expected at least the lasting power, 4000 W'],
    ['idle: 20 W', 'idle: 5 kW', 'inverter.idle: found 5000 W, expected at most the power, 4000 W'],
    ['search: { idle: 3 W', 'search: { idle: 21 W', 'inverter.search.idle: found 21 W, expected at most the idle draw'],
    ['below: 15 W }', 'below: 5 kW }', 'inverter.search.below: found 5000 W, expected at most the power, 4000 W'],
    [
      'age: 3 years',
      'age: 60 years',
      'bank.age: found 60 years, expected at most 48, 4 times the calendar life of 12 years',
    ],
  ] as const) {
    const problems = problemsOf(example.replace(written, instead));
    expect(problems.map(({ path, message }) => `${path}: ${message}`).join('\n')).toContain(message);
    expect(problems[0]!.line).toBeGreaterThan(1);
  }
});
