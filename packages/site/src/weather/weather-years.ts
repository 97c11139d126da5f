import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, extname, join, resolve } from 'node:path';
import type { NamedFile } from '../named-file.js';

/** Endings by which a folder's weather files are known. */
const weatherEndings = new Set(['.csv', '.epw', '.txt']);

/**
 * The real years that files, folders and patterns (`*` and `?` in the last part of a path) name, in the order of the list,
 * names sorted. A file that holds several calendar years counts once for each that is whole.
 */
export function weatherYearsOf(named: readonly NamedFile[], leaveOut: readonly number[], folder: string): NamedFile[] {
  return named
    .flatMap(({ written }) => filesOf(written, folder))
    .flatMap((file) => {
      const years = calendarYearsIn(file.path);
      if (years.length < 2) return leaveOut.includes(years[0] ?? 0) ? [] : [file];
      return years.filter((year) => !leaveOut.includes(year)).map((calendarYear) => ({ ...file, calendarYear }));
    });
}

function filesOf(written: string, folder: string): NamedFile[] {
  const path = resolve(folder, written);
  if (isFolder(path)) {
    return readdirSync(path)
      .filter((name) => weatherEndings.has(extname(name).toLowerCase()))
      .sort()
      .map((name) => ({ written: join(written, name), path: join(path, name) }));
  }
  const pattern = basename(path);
  if (!/[*?]/.test(pattern) || !isFolder(dirname(path))) return [{ written, path }];
  const fits = new RegExp(
    `^${pattern
      .replace(/[.+^${}()|[\]\\]/g, '\\$&')
      .replace(/\*/g, '.*')
      .replace(/\?/g, '.')}$`,
  );
  return readdirSync(dirname(path))
    .filter((name) => fits.test(name))
    .sort()
    .map((name) => ({ written: join(dirname(written), name), path: join(dirname(path), name) }));
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
}

/** Rows of a year below which it is a beginning or an end of a table: nine tenths of the hours, or of the days. */
const fewestHours = 7884;
const fewestDays = 328;

const scanned = new Map<string, { stamp: string; years: number[] }>();

/**
 * The calendar years that a file holds whole, by a look at the beginnings of its rows; none where it cannot be read, or its
 * months are those of a typical year.
 */
function calendarYearsIn(path: string): number[] {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats?.isFile()) return [];
  const stamp = `${stats.mtimeMs} ${stats.size}`;
  const known = scanned.get(path);
  if (known?.stamp === stamp) return known.years;
  const years = scan(readFileSync(path, 'latin1'));
  scanned.set(path, { stamp, years });
  return years;
}

function scan(text: string): number[] {
  const rows = new Map<number, number>();
  // 2016-01-01T00:00 of a table, 2016,1,1,1 of EPW and POWER, 01/01/2016 of TMY3.
  for (const match of text.matchAll(/^\s*"?(?:(\d{4})[-,]\d|\d\d\/\d\d\/(\d{4}),)/gm)) {
    const year = Number(match[1] ?? match[2]);
    rows.set(year, (rows.get(year) ?? 0) + 1);
  }
  const most = Math.max(0, ...rows.values());
  const fewest = most > 400 ? fewestHours : fewestDays;
  return [...rows]
    .filter(([, count]) => count >= fewest)
    .map(([year]) => year)
    .sort((a, b) => a - b);
}
