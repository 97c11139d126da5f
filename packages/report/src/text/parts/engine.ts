import { monthNames } from '@wintergap/ground';
import { engineTimes, longestDaysBetween } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { figure } from '../../words/figures.js';
import { plainTable } from './plain-table.js';

const dayParts = [0, 4, 8, 12, 16, 20];

/** When the engine runs: its hours by month and part of the day, and the longest rest; empty if it never does. */
export function engineText({ ledger, summary }: YearResult): string {
  if (summary.generator.hours === 0) return '';
  const times = engineTimes(ledger.generatorH);
  const rest = longestDaysBetween(ledger.generatorH);
  const rows = monthNames
    .map((name, month) => [
      name,
      ...dayParts.map((from) => {
        const hours = times[month]!.slice(from, from + 4).reduce((sum, part) => sum + part, 0);
        return hours === 0 ? '-' : figure(hours);
      }),
    ])
    .filter((row) => row.slice(1).some((cell) => cell !== '-'));
  const head = ['', ...dayParts.map((from) => `${from}-${from + 4} h`)];
  return [
    `Engine  hours by month and time of day; longest rest ${figure(rest ?? 0)} days`,
    plainTable(head, rows)
      .split('\n')
      .map((line) => `        ${line}`)
      .join('\n'),
  ].join('\n');
}
