import { BestDesigns, type CommonBest, resultColumns, type SweepResults, type SweepRow } from '@wintergap/study';
import { expect, test } from 'vitest';
import { type SweepPage, sweepText } from './sweep.js';

const figures = (generatorHours: number, darkHours = 0): SweepResults => ({
  ...(Object.fromEntries(resultColumns.map((name) => [name, 0])) as SweepResults),
  generatorHours,
  fuelLitres: generatorHours * 1.6,
  darkHours,
});

function page(axes: string[], rows: SweepRow[], base: SweepResults | null = figures(57)): SweepPage {
  const best = new BestDesigns(2);
  for (const row of rows) best.add(row);
  return {
    site: 'Otter Bend',
    axes,
    summary: best.summary(),
    base,
    common: null,
    unpriced: [],
    unpricedApart: [],
    currency: null,
  };
}

const row = (number: number, values: unknown[], results: SweepResults | null, error = ''): SweepRow => ({
  number,
  id: '97bec79738be8839',
  values,
  results,
  limits: [],
  error,
});

/** Without the breaks of its lines. */
const flat = (text: string) => text.replace(/\s+/g, ' ');
const widest = (text: string) => Math.max(...text.split('\n').map((line) => line.length));

test('says first how many designs there were and which runs the engine least', () => {
  const rows = [row(1, ['500 Ah'], figures(90)), row(2, ['1000 Ah'], figures(40)), row(3, ['2000 Ah'], figures(30))];
  const text = sweepText(page(['bank.capacity'], rows), 'metric');
  expect(flat(text)).toMatch(
    /^Otter Bend: of 3 designs, number 3 runs the engine least, 30 h on 48 L of fuel \(the base design: 57 h; both in the file's year\): bank\.capacity 2000 Ah\./,
  );
  expect(text).toMatch(/^3 +30 .*2000 Ah$/m);
  expect(text).toMatch(/^base +57 /m);
  expect(flat(text)).not.toContain('500 Ah');
});

test("a usual year of the best is held against the base design's usual year, not the file's", () => {
  const own = (name: string, usual: number) => ({
    name,
    ranked: { generatorHours: { usual: { value: usual }, oneInTen: { value: 2 * usual } } },
  });
  const common = { merit: 'generatorHours', weather: { count: 25, kind: 'resampled', spread: null }, leftOut: [] };
  const rows = [row(1, [2], figures(30)), row(2, [3], figures(20))];
  const told = (leaders: string[]) => {
    const answer = { ...common, leaders, designs: [own('1', 33), own('2', 24)], base: own('base', 61) };
    return flat(sweepText({ ...page(['arrays.0.strings'], rows), common: answer as unknown as CommonBest }, 'metric'));
  };
  expect(told(['2'])).toContain(
    '24 h in a usual year, one year in ten 48 h or more (the base design: 61 h in a usual year)',
  );
  expect(told(['1', '2'])).toContain('24 to 33 h in a usual year (the base design: 61 h in a usual year)');
});

test('rankings with the same designs first are told once, others apart', () => {
  const same = [row(1, [2], figures(30)), row(2, [3], figures(40))];
  expect(sweepText(page(['arrays.0.strings'], same), 'metric')).toContain(
    'Fewest generator hours, least fuel, fewest dark',
  );
  const other = [row(1, [2], figures(0, 20)), row(2, [3], figures(9, 3)), row(3, [4], figures(10, 0))];
  const text = sweepText(page(['arrays.0.strings'], other), 'metric');
  expect(text).toMatch(/^Fewest generator hours, least fuel$/m);
  expect(text).toMatch(/^Fewest dark hours$/m);
  expect(text.split('\n')[0]).toContain('number 1 runs the engine least');
  expect(flat(text)).toContain('but leaves load dark for 20 h');
});

test('keeps to 80 columns, with the values below the table where they do not fit beside it', () => {
  const mount = { kind: 'seasonal', azimuth: 180, tilts: [{ from: '10-01', tilt: 70 }] };
  const axes = ['variant', 'arrays.garden pole.mount', 'bank.capacity', 'generator.stop.above'];
  const rows = [1, 2, 3].map((n) => row(n, ['taller pole', mount, '1000 Ah', '80 %'], figures(n)));
  const text = sweepText(page(axes, rows), 'us');
  expect(text).toMatch(/^1: variant taller pole/m);
  expect(widest(text)).toBeLessThanOrEqual(80);
});

test('designs that could not be run are counted, with the reason of the first', () => {
  const rows = [row(1, [2], null, 'arrays[0].strings: found 2'), row(2, [3], figures(40))];
  const text = sweepText(page(['arrays.0.strings'], rows), 'metric');
  expect(flat(text)).toContain('1 design could not be run. The first of them, design 1: arrays[0].strings: found 2');
  expect(sweepText(page(['arrays.0.strings'], [rows[0]!]), 'metric')).toMatch(
    /^Otter Bend: none of 1 design could be run/,
  );
});
