// Whole processes against a Node.js that does nothing.
import { join } from 'node:path';
import { inPairs, once } from './measure.mjs';
import { root, scratch, siteFile, sweepFile } from './place.mjs';

const bare = [process.execPath, '-e', '0'];
const program = [process.execPath, join(root, 'packages/cli/bin/wintergap.js')];

const rows = [
  ['help', ['--help'], [0], 1.6],
  ['an option that is none', ['year', '--bogus'], [2], 1.6],
  ['a site file that is not there', ['year', 'nowhere.yaml'], [2], 1.6],
  ["`year`, the file's year alone", ['year', siteFile, '--years', '1'], [0], 4],
  ['`year`, 25 common years', ['year', siteFile], [0], null],
];

/** Times of starts, errors and years, as rows of a table. */
export function starts(pairs) {
  return [
    '| command | times `node -e 0`, by the clock | by processor time | wanted | ms | peak MB |',
    '| --- | --: | --: | --: | --: | --: |',
    ...rows.map(([name, args, exits, wanted]) => {
      const { wallRatio, cpuRatio, wallMs, peakMB } = inPairs([...program, ...args], bare, pairs, exits);
      return `| ${name} | ${wallRatio.toFixed(1)} | ${cpuRatio.toFixed(1)} | ${wanted ?? ''} | ${wallMs.toFixed(0)} | ${peakMB.toFixed(0)} |`;
    }),
  ];
}

/** Five designs side by side: the file's year alone, 25 common years, and as many as tell them apart. */
export function comparisons(pairs) {
  const compare = (...options) => [...program, 'compare', siteFile, ...options];
  const alone = compare('--years', '1');
  const rows = [
    ['25 years', compare('--years', '25')],
    ['until they are told apart', compare()],
  ].map(([name, command]) => {
    const { wallMs, yardstickMs } = inPairs(command, alone, pairs, [0]);
    const wanted = name === '25 years' ? (2 * yardstickMs + 1000).toFixed(0) : '';
    return `| ${name} | ${yardstickMs.toFixed(0)} | ${wallMs.toFixed(0)} | ${wanted} |`;
  });
  return [
    "| common years | ms of the file's year alone | ms | wanted: twice that and 1 s |",
    '| --- | --: | --: | --: |',
    ...rows,
  ];
}

/** How a sweep grows with its designs: the rows of the file's year, written to a file. */
export function sweepGrowth(counts) {
  return growth('designs', counts, (designs) => {
    const out = scratch(`rows-${designs}.csv`);
    return ['sweep', sweepFile(designs), '--out', out, '--best-years', '1'];
  });
}

/** How `year` grows with its common years. */
export function yearsGrowth(counts) {
  return growth('common years', counts, (years) => ['year', siteFile, '--years', String(years)]);
}

function growth(what, counts, argsOf) {
  const timed = counts.map((count) => ({ count, ...once([...program, ...argsOf(count)]) }));
  const least = timed[0];
  return [
    `| ${what} | s by the clock | s of processors | ms of processors for each more | peak MB |`,
    '| --: | --: | --: | --: | --: |',
    ...timed.map(({ count, wallMs, cpuMs, peakMB }) => {
      const each = count === least.count ? '' : ((cpuMs - least.cpuMs) / (count - least.count)).toFixed(1);
      const grouped = count.toLocaleString('en-US');
      return `| ${grouped} | ${(wallMs / 1000).toFixed(1)} | ${(cpuMs / 1000).toFixed(1)} | ${each} | ${peakMB.toFixed(0)} |`;
    }),
  ];
}
