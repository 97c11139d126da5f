import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isMap, isScalar, isSeq, type Node, parseDocument } from 'yaml';
import { readCosts } from '../packages/seasonal/src/index.js';
import { readCarry } from '../packages/seasonal/src/verdict/carry-section.js';
import { parseSite, SiteError, type SiteProblem } from '../packages/site/src/index.js';
import { readSize } from '../packages/study/src/index.js';
import { readSweep } from '../packages/study/src/sweep/section.js';

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

/** The sections around the design, and what reads each. */
const sections = { sweep: readSweep, size: readSize, carry: readCarry, costs: readCosts };

/** Every number, with unit or without, that stands in the base design and in the sections around it. */
function numbersIn(text: string): Written[] {
  const found: Written[] = [];
  const visit = (node: unknown, path: string) => {
    if (isMap(node)) {
      for (const { key, value } of node.items) {
        const name = String((key as Node & { value: unknown }).value);
        if (path !== '' || name !== 'variants') visit(value, path === '' ? name : `${path}.${name}`);
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

/** Problems of a site file's text; of the sections around the design where the design itself is right. */
function problemsOf(text: string): readonly SiteProblem[] {
  const problemsFrom = <Result>(read: () => Result): SiteProblem[] => {
    try {
      read();
      return [];
    } catch (error) {
      if (!(error instanceof SiteError)) throw error;
      return [...error.problems];
    }
  };
  const ofDesign = problemsFrom(() => parseSite(text, file));
  if (ofDesign.length > 0) return ofDesign;
  const site = parseSite(text, file);
  return Object.values(sections).flatMap((read) => problemsFrom(() => read(site)));
}

/** Values that designs are made of: those are tried in a design, one by one. */
const isChoice = ({ path }: Written): boolean => /^(sweep\.designs|size\.choose)\./.test(path);

const sectionOf = ({ path }: { path: string }): string => /^\w+/.exec(path)![0];

test('the example is right, and has numbers of every section', () => {
  expect(problemsOf(example)).toEqual([]);
  const found = new Set(numbers.map(sectionOf));
  const all =
    'place weather ground skyline horizon snow rooms arrays bank inverter converter loads measuredLoad events generator sweep size carry costs';
  expect([...found]).toEqual(expect.arrayContaining(all.split(' ')));
  expect(numbers.length).toBeGreaterThan(200);
});

/** Whether a number is read with a section around the design; lines of `costs.extra` belong to each design. */
const isAround = (one: Written): boolean => sectionOf(one) in sections && !one.path.startsWith('costs.extra');

/** Numbers that are told together: those of the design at once, and those of each section when it is read. */
const walks = ['the design', 'the sections around it'] as const;

for (const [number, walk] of ['1e12', '-1e12'].flatMap((number) => walks.map((walk) => [number, walk] as const))) {
  test(`${number} for every number of ${walk} is told for each, at its place and under its key`, () => {
    let text = example;
    const walked = numbers.filter((one) => isAround(one) === (walk !== 'the design') && !isChoice(one));
    expect(walked.length).toBeGreaterThan(30);
    for (const { from, to, text: written } of walked.toReversed()) {
      text = text.slice(0, from) + written.replace(/^[+-]?[\d.]+/, number) + text.slice(to);
    }
    const problems = problemsOf(text);
    const told = new Set(problems.map(({ path, line }) => `${line} ${path}`));
    expect(walked.map(({ line, path }) => `${line} ${path}`).filter((place) => !told.has(place))).toEqual([]);
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

test('a value out of range among those that designs are made of is told at its place', () => {
  const choices = numbers.filter(isChoice);
  expect(choices.length).toBe(4);
  for (const { from, to, text, line, path } of choices) {
    const problems = problemsOf(example.slice(0, from) + text.replace(/^[\d.]+/, '1e12') + example.slice(to));
    expect(problems.map((problem) => problem.line)).toEqual([line]);
    expect(path.startsWith(problems[0]!.path)).toBe(true);
    expect(problems[0]!.message).toContain('found 1e12');
  }
});
