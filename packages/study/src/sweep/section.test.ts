import { readFileSync } from 'node:fs';
import { parseSite, SiteError } from '@wintergap/site';
import { expect, test } from 'vitest';
import { readSweep } from './section.js';

const example = readFileSync(new URL('../../../../examples/kettle-pond.yaml', import.meta.url), 'utf8').replace(
  /^sweep:\n( .*\n)+/m,
  '',
);
/** Line of the `sweep:` key when a section is put behind the example. */
const line = example.split('\n').length;
const withSweep = (section: string) => parseSite(`${example}${section}`, 'site.yaml');

function problemsOf(section: string): string[] {
  try {
    readSweep(withSweep(section));
  } catch (error) {
    expect(error).toBeInstanceOf(SiteError);
    return (error as SiteError).problems.map((p) => `${p.line - line}:${p.column} ${p.path}: ${p.message}`);
  }
  return [];
}

test('reads ranges, lists and a sample, and puts the axes in order', () => {
  const { axes, order } = readSweep(
    withSweep(
      'sweep:\n  designs: { bank.capacity: [500 Ah, 1000 Ah], arrays.garden pole.strings: [2..4, 8], variant: [base, fixed] }\n  sample: { count: 5, seed: 1 }\n',
    ),
  );
  expect(axes).toEqual([
    { path: 'variant', values: ['base', 'fixed'] },
    { path: 'arrays.garden pole.strings', values: [2, 3, 4, 8] },
    { path: 'bank.capacity', values: ['500 Ah', '1000 Ah'] },
  ]);
  expect(order).toEqual({ gridSize: 16, sample: { count: 5, seed: 1 } });
});

test('a range may stand alone, and a value may be a mapping', () => {
  const { axes } = readSweep(
    withSweep(
      'sweep:\n  designs:\n    arrays.0.strings: 2..3\n    arrays.0.mount: [{ kind: fixed, tilt: 50, azimuth: 180 }, { kind: fixed, tilt: 60, azimuth: 180 }]\n',
    ),
  );
  expect(axes.map(({ values }) => values.length)).toEqual([2, 2]);
});

test('a path that leads nowhere, a wrong unit and an unknown variant are told with line and column', () => {
  expect(problemsOf('sweep:\n  designs:\n    arrays.9.strings: 2..3\n')).toEqual([
    expect.stringMatching(/^2:5 sweep\.designs\.arrays\.9\.strings: "9" leads nowhere/),
  ]);
  expect(problemsOf('sweep:\n  designs:\n    bank.capacity: [500 Ah, 800 m]\n')).toEqual([
    expect.stringMatching(/^2:29 sweep\.designs\.bank\.capacity: [^:]*800 m/),
  ]);
  expect(problemsOf('sweep:\n  designs: { bank.capacitty: [500 Ah] }\n')[0]).toMatch(
    /^1:\d+ .*did you mean "capacity"/,
  );
  expect(problemsOf('sweep:\n  designs: { variant: [base, fixd] }\n')[0]).toMatch(/^1:30 .*did you mean "fixed"/);
});

test('what is wrong with the section itself is told with line and column', () => {
  expect(problemsOf('')[0]).toMatch(/the site file has no sweep section/);
  expect(problemsOf('sweep:\n  desings: {}\n').join()).toMatch(/did you mean "designs"/);
  expect(problemsOf('sweep:\n  designs: {}\n')[0]).toMatch(/^1:3 sweep\.designs: found no ranges/);
  expect(problemsOf('sweep:\n  designs: { bank.capacity: [] }\n')[0]).toMatch(/^1:14 .*found no values/);
  expect(problemsOf('sweep:\n  designs: { arrays.0.strings: [2, 8..2] }\n')[0]).toMatch(
    /^1:\d+ .*smaller number first/,
  );
  expect(problemsOf('sweep:\n  designs: { arrays.0.strings: [2..4, 3] }\n')[0]).toMatch(/3 is there twice/);
  expect(problemsOf('sweep:\n  designs: { arrays.0.strings: 2..4 }\n  sample: { count: 4, seed: 1 }\n')[0]).toMatch(
    /^2:13 sweep\.sample\.count: found 4, but the ranges make 3 designs/,
  );
});

test('values that are right only together are not refused', () => {
  const section = 'sweep:\n  designs: { generator.start.below: [30 %, 45 %], generator.stop.above: [40 %, 80 %] }\n';
  expect(readSweep(withSweep(section)).order.gridSize).toBe(4);
});

test('more designs than can be counted exactly are refused', () => {
  const axes = [
    'bank.capacity: 1..10000 Ah',
    'inverter.idle: 1..10 W',
    'arrays.0.strings: 1..1000',
    'loads.0.power: 1..10000 W',
    'loads.1.power: 1..10000 W',
  ];
  expect(problemsOf(`sweep:\n  designs: { ${axes.join(', ')} }\n`)[0]).toMatch(
    /^1:3 sweep\.designs: the ranges make 1\.0e\+16/,
  );
});
