import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LoadTableOptions, readLoadTable } from './load-table.js';
import { loadYear } from './load-year.js';

const two = (n: number) => String(n).padStart(2, '0');
const stamp = (minute: number, start = Date.UTC(2023, 0, 1)) =>
  new Date(start + minute * 60_000).toISOString().slice(0, 16).replace('T', ' ');

/** Rows of a table from a value per step. */
function table(header: string, steps: number, stepMinutes: number, cells: (step: number) => string, start?: number) {
  const lines = [header];
  for (let k = 0; k < steps; k++) lines.push(`${stamp(k * stepMinutes, start)},${cells(k)}`);
  return lines.join('\n');
}
const read = (text: string, options: Partial<LoadTableOptions> = {}) =>
  readLoadTable(text, { source: 'loads.csv', ...options });

test('hourly powers of a year arrive in their hours', () => {
  const load = read(table('time, ac [W], dc [W]', 8760, 60, (k) => `${k},7`));
  expect(load.acW[0]).toBe(0);
  expect(load.acW[8759]).toBe(8759);
  expect(load.dcW[4321]).toBe(7);
  expect(load.energyWhYear).toBe((8759 * 8760) / 2 + 7 * 8760);
  expect(load.gaps).toEqual([]);
  expect(load.covers).toBe('year');
});

test('energies of quarter hours become mean powers of the hour', () => {
  const load = read(table('time,ac [kWh]', 35040, 15, (k) => String(k % 4 === 0 ? 0.3 : 0.1)));
  expect(load.stepMinutes).toBe(15);
  expect(load.acW[100]).toBeCloseTo(600, 9);
  expect(load.energyWhYear).toBeCloseTo(600 * 8760, 5);
});

test('steps longer than an hour are spread over their hours', () => {
  const load = read(table('time,dc [kWh]', 1460, 360, (k) => String(k % 4)));
  expect(Array.from(load.dcW.subarray(0, 13), Math.round)).toEqual([
    0, 0, 0, 0, 0, 0, 167, 167, 167, 167, 167, 167, 333,
  ]);
});

test('a year that begins in July is put in the order of the calendar', () => {
  const load = read(table('time,ac [W]', 8760, 60, (k) => String(k), Date.UTC(2022, 6, 1)));
  expect(load.acW[181 * 24]).toBe(0);
  expect(load.acW[181 * 24 - 1]).toBe(8759);
  expect(load.acW[0]).toBe(184 * 24);
});

test('a leap day is dropped, the days after it keep their dates', () => {
  const load = read(table('time,ac [W]', 8784, 60, (k) => String(Math.floor(k / 24)), Date.UTC(2024, 0, 1)));
  expect(load.leapDayDropped).toBe(true);
  expect(load.acW[58 * 24]).toBe(58);
  expect(load.acW[59 * 24]).toBe(60);
  expect(load.acW[364 * 24]).toBe(365);
});

test('dates without a year make a year, with the spring jump of the leap day or without', () => {
  const days = Array.from({ length: 366 }, (_, d) => stamp(d * 1440, Date.UTC(2024, 0, 1)).slice(5, 10));
  const rows = (list: string[]) => `time,ac [kWh]\n${list.map((day, d) => `${day} 00:00,${d}`).join('\n')}`;
  expect(read(rows(days)).acW[8759]).toBeCloseTo(365_000 / 24, 9);
  const load = read(rows(days.filter((day) => day !== '02-29')));
  expect(load.leapDayDropped).toBe(false);
  expect(load.acW[59 * 24]).toBeCloseTo(59_000 / 24, 9);
});

test('a typical day is repeated', () => {
  const rows = Array.from({ length: 48 }, (_, k) => `${two(Math.floor(k / 2))}:${k % 2 === 0 ? '00' : '30'},${k}`);
  const load = read(`time,ac [W]\n${rows.join('\n')}`);
  expect(load.covers).toBe('day');
  expect(load.acW[0]).toBe(0.5);
  expect(load.acW[24 * 200 + 23]).toBe(46.5);
});

test('a typical week falls on its weekdays, however it is written', () => {
  const names = ['Mon', 'Tue', 'Wed', 'Thursday', 'Fri', 'sat', 'SUN'];
  const rows = names.flatMap((name, d) => Array.from({ length: 24 }, (_, h) => `${name} ${two(h)}:00,${d}`));
  // 1 January 2023 was a Sunday, 2 January 2023 a Monday.
  const named = read(`time,ac [W]\n${rows.join('\n')}`, { firstWeekday: 0 });
  expect([0, 1, 2, 7].map((day) => named.acW[day * 24])).toEqual([6, 0, 1, 6]);
  const dated = read(
    table('time,ac [W]', 168, 60, (k) => String(Math.floor(k / 24)), Date.UTC(2023, 0, 2)),
    { firstWeekday: 0 },
  );
  expect(dated.acW).toEqual(named.acW);
  expect(() => read(`time,ac [W]\n${rows.join('\n')}`)).toThrow('needs firstWeekday');
});

test('columns of one bus are added, others are left alone', () => {
  const load = read(table('time,ac kitchen [W],room [C],AC shed [kW],dc [Wh]', 24, 60, () => '50,21,0.2,8'));
  expect(load.acW[30]).toBeCloseTo(250, 12);
  expect(load.dcW[30]).toBe(8);
});

test('semicolons, comments, blank lines and a byte-order mark do no harm', () => {
  const rows = Array.from({ length: 24 }, (_, h) => `${two(h)}:00;5`).join('\r\n');
  expect(read(`\uFEFF# invented\r\n\r\ntime;ac [W]\r\n${rows}\r\n`).acW[8759]).toBe(5);
});

test('scaling meets the yearly energy and keeps the shape', () => {
  const load = read(
    table('time,ac [W],dc [W]', 24, 60, (k) => `${k},10`),
    { scaleToKWh: 1200 },
  );
  const total = load.acW.reduce((sum, value, h) => sum + value + load.dcW[h]!, 0);
  expect(total).toBeCloseTo(1_200_000, 6);
  expect(load.acW[20]! / load.dcW[20]!).toBeCloseTo(2, 12);
});

describe('gaps', () => {
  test('missing rows and empty cells are filled from the day before and listed with their lines', () => {
    const lines = table('time,ac [W]', 8760, 60, (k) => String(1 + Math.floor(k / 24))).split('\n');
    lines[50] = `${lines[50]!.split(',')[0]},`;
    lines.splice(101, 3);
    const load = read(lines.join('\n'));
    expect(load.gaps).toEqual([
      { line: 51, hours: 1 },
      { line: 101, hours: 3 },
    ]);
    expect(load.acW[49]).toBe(2);
    expect(load.acW[101]).toBe(4);
  });

  test('more than two days are too long to make up', () => {
    const lines = table('time,ac [W]', 8760, 60, () => '1').split('\n');
    lines.splice(1000, 49);
    expect(() => read(lines.join('\n'))).toThrow('loads.csv line 1000: 49 hours without values');
  });

  test('a typical day has no other day to take a value from', () => {
    const lines = table('time,ac [W]', 24, 60, () => '1').split('\n');
    lines.splice(5, 1);
    expect(() => read(lines.join('\n'))).toThrow('line 5: 1 hours without values and no other day');
  });
});

describe('tables that are refused', () => {
  const day = table('time,ac [W]', 24, 60, () => '1');
  test.each([
    ['nothing at all', '', 'loads.csv: empty'],
    ['no time', 'hour,ac [W]\n0,1', 'line 1: no column "time"'],
    ['no unit', 'time,ac\n00:00,1', 'column "ac" must end with its unit'],
    ['a unit of something else', 'time,ac [V]\n00:00,1', 'column "ac [V]" must end with its unit'],
    ['no load', 'time,room [C]\n00:00,1', 'no load column'],
    ['text for a number', day.replace(',1\n', ',one\n'), 'line 2: ac is "one"'],
    ['a decimal comma', `time;ac [W]\n${'00:00;1,5\n01:00;1,5\n'}`, 'line 2: ac is "1,5"'],
    ['a negative load', day.replace(',1\n', ',-1\n'), 'line 2: ac is "-1"'],
    [
      'a date that does not exist',
      day.replace('2023-01-01 00:00', '2023-02-29 00:00'),
      'line 2: time is "2023-02-29 00:00"',
    ],
    ['an hour twice', day.replace('02:00', '01:00'), 'line 4: time does not go forward'],
    ['mixed stamps', day.replace('2023-01-01 05:00', '05:00'), 'line 7: time is written differently'],
    ['an odd step', table('time,ac [W]', 30, 42, () => '1'), 'step of 42 minutes'],
    ['a row off its step', day.replace('05:00', '05:20'), 'line 7: time is not a multiple'],
    ['a month', table('time,ac [W]', 744, 60, () => '1'), 'lines 2 to 745 cover 31 days'],
    ['one row', 'time,ac [W]\n00:00,1', '1 rows'],
  ])('%s', (_, text, message) => {
    expect(() => read(text)).toThrow(message);
  });

  test('a table of zeros cannot be scaled', () => {
    expect(() => read(day.replaceAll(',1', ',0'), { scaleToKWh: 100 })).toThrow('holds no energy');
  });

  test('whatever the text, the answer is a load or an error, never NaN', () => {
    const line = fc.oneof(fc.string(), fc.constantFrom('time,ac [W]', '00:00,1', '12:00,', '2023-01-01 00:00,5', '"'));
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), (lines) => {
        try {
          expect(read(lines.join('\n')).acW.every(Number.isFinite)).toBe(true);
        } catch (error) {
          expect((error as Error).message).toContain('loads.csv');
        }
      }),
      { numRuns: 300 },
    );
  });
});

test('a measured table joins appliances as an item and under a start', () => {
  const measured = read(table('time,ac [W]', 24, 60, (k) => (k === 9 ? '700' : '100')));
  const year = loadYear(
    [{ name: 'pump', powerW: 500, runs: 0.1, surge: { factor: 3 }, bus: 'ac' }],
    [],
    { airC: new Float64Array(8760), upShare: new Float64Array(8760), firstWeekday: 0 },
    [measured],
  );
  expect(year.items.map((item) => item.name)).toEqual(['pump', 'loads.csv']);
  expect(year.acW[9]).toBe(750);
  expect(year.largestSurge).toEqual({ powerW: 2200, hour: 9, name: 'pump' });
  expect(year.coincidentAcW).toBe(1200);
});
