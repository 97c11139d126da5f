import { loadSite } from '@wintergap/site';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { dayText } from './day.js';

const path = new URL('../../../../examples/kettle-pond.yaml', import.meta.url).pathname;
const result = simulateSite(loadSite(path).base);
const { ledger } = result;

/** The lines of the table as mappings of heads to numbers. */
function tableOf(day: number): { unit: string; rows: Record<string, number>[] } {
  const lines = dayText(result, day, 'metric').split('\n');
  const at = lines.findIndex((line) => line.startsWith('hour'));
  const heads = lines[at]!.trim().split(/\s+/);
  const rows = lines.slice(at + 2, at + 27).map((line) => {
    const cells = line.replaceAll(' %', '').trim().split(/\s+/);
    return Object.fromEntries(heads.map((head, i) => [head, cells[i] === '-' ? 0 : Number(cells[i])]));
  });
  return { unit: lines[at + 1]!.trim().split(/\s+/)[0]!, rows };
}

const dayWithStart = Math.floor(ledger.starts.findIndex((starts) => starts > 0) / 24);

// What comes to the buses goes somewhere: to loads, their losses, drives and heater, or into the bank.
test.each([dayWithStart, 10, 171, 354])('the columns of day %i add up, hour by hour and over the day', (day) => {
  const { unit, rows } = tableOf(day);
  // Half of the last digit shown: of eight figures in a line, of 25 down a column.
  const half = { Wh: 0.5, kWh: 0.005 }[unit]!;
  expect(rows).toHaveLength(25);
  for (const { sun = 0, engine = 0, load = 0, inverter = 0, convert = 0, drives = 0, heater = 0, bank = 0 } of rows) {
    expect(Math.abs(sun + engine - load - inverter - convert - drives - heater - bank)).toBeLessThanOrEqual(
      8.01 * half,
    );
  }
  for (const head of ['sun', 'load', 'bank']) {
    const hours = rows.slice(0, 24).reduce((sum, row) => sum + row[head]!, 0);
    expect(Math.abs(hours - rows[24]![head]!), head).toBeLessThanOrEqual(25.01 * half);
  }
});

test('each start of the engine is given its reason', () => {
  expect(dayText(result, dayWithStart, 'metric')).toMatch(
    /Engine start between \d+ h and \d+ h: the charge was down to 45 %\./,
  );
});
