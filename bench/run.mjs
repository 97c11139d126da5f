// Times and memory of the program, written to RESULTS.md beside this file. Run after `npm run build`.
//
//   npm run bench                    some minutes
//   npm run bench -- --long          also 10,000 and 100,000 designs and 1,000 years: hours on a slow machine
//   npm run bench -- --pairs 3       fewer pairs of runs than 9
//   npm run bench -- --plain         the balance without the limit that the program raises as it starts
import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { inside } from './inside.mjs';
import { liveMoves } from './live.mjs';
import { machine } from './machine.mjs';
import { weatherName } from './place.mjs';
import { comparisons, starts, sweepGrowth, yearsGrowth } from './starts.mjs';

const { values } = parseArgs({
  options: {
    long: { type: 'boolean', default: false },
    plain: { type: 'boolean', default: false },
    pairs: { type: 'string', default: '9' },
  },
});
const { long, plain } = values;
const pairs = Number(values.pairs);
if (!(Number.isInteger(pairs) && pairs > 0)) throw new RangeError(`--pairs ${values.pairs}: expected 1 or more`);

const lines = [
  '# Times and memory',
  '',
  'Written by `npm run bench`; not by hand. Ratios are medians of pairs that ran in turn, so they hold on a busy machine',
  'too; times by the clock and designs a second do not.',
  '',
  ...machine(),
  `- ${pairs} pairs of runs; weather from ${weatherName}`,
  '',
];
const section = (title, table) => lines.push(`## ${title}`, '', ...table, '');

section('Whole commands', starts(pairs));
section('Five designs compared', comparisons(pairs));
section('Inside', inside(plain));
section(
  'Designs of a sweep, on all processors',
  sweepGrowth(long ? [10, 100, 1000, 10_000, 100_000] : [10, 100, 1000]),
);
section('Common years of one design', yearsGrowth(long ? [1, 10, 100, 1000] : [1, 10, 100]));
section('Moves on the live page', await liveMoves());
if (!long) lines.push('Up to 100,000 designs and 1,000 years with `npm run bench -- --long`.', '');
lines.push(`Load average of the last minute at the end: ${loadavg()[0].toFixed(1)}.`);

const text = `${lines.join('\n')}\n`;
writeFileSync(join(import.meta.dirname, 'RESULTS.md'), text);
process.stdout.write(text);
