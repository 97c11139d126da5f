import { dateOfDay, daysInMonth, monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { YearLine } from '@wintergap/weather';
import { darkSeasonOf } from '@wintergap/year';
import { count, figure, wrap } from '../../words/figures.js';
import { inShownUnits, inTemperatureUnit, temperatureUnit } from '../../words/shown-units.js';
import { plainTable } from './plain-table.js';

const pictureWidth = 50;

/** Several real years of a place, a line each, 80 columns, verdict first; then a picture of their dark months. */
export function weatherYearsText(years: readonly YearLine[], units: UnitSystem = 'metric'): string {
  const read = years.filter((year) => year.monthsKWhM2 !== null);
  const broken = years.filter(({ verdict }) => verdict === 'rejected');
  const months = darkMonths(read);
  const winter = (year: YearLine): number => months.reduce((sum, month) => sum + year.monthsKWhM2![month - 1]!, 0);
  const verdicts = years.map(({ verdict }) => verdict);
  const counted = (['good', 'usable', 'rejected'] as const)
    .map((verdict) => `${verdicts.filter((other) => other === verdict).length} ${verdict}`)
    .join(', ');
  const head = ['', 'sun', 'dark months', 'dullest spell', 'from', 'missing', 'air', 'verdict'];
  const unit = ['', 'kWh/m2', 'kWh/m2', 'days', '', 'h', temperatureUnit(units), ''];
  const rows = years.map((year) =>
    year.monthsKWhM2 === null
      ? [year.name, '-', '-', '-', '-', '-', '-', year.verdict]
      : [
          year.name,
          figure(year.sunKWhM2!, 0),
          figure(winter(year), 1),
          String(year.dullDays),
          dateOfDay(year.dullFrom!),
          figure(year.missingHours!, 0),
          figure(inTemperatureUnit(year.meanAirC!, units), 1),
          year.verdict,
        ],
  );
  const season = months.map((month) => monthNames[month - 1]).join(', ');
  const notes = years
    .filter(({ verdict }) => verdict !== 'good')
    .flatMap(({ name, notices }) =>
      notices
        .filter(({ level }) => level !== 'note')
        .map(({ level, text }) => wrap(`  ${name}: ${level}: ${inShownUnits(text, units)}`, 80, '    ')),
    );
  const leaveOut = broken.length > 0 ? ' Leave the rejected ones out with leaveOut: [YEAR] in the site file.' : '';
  return [
    wrap(`${count(years.length, 'year')}: ${counted}. Dark months: ${season}.${leaveOut}`),
    plainTable(head, [unit, ...rows]),
    ...(read.length > 1 ? [picture(read, winter)] : []),
    ...(notes.length > 0 ? [['Notices', ...notes].join('\n')] : []),
  ].join('\n\n');
}

/** The three darkest months of the mean of the years. */
function darkMonths(read: readonly YearLine[]): number[] {
  const sums = Array.from({ length: 12 }, (_, m) => read.reduce((sum, year) => sum + year.monthsKWhM2![m]!, 0));
  return darkSeasonOf(sums, daysInMonth).months;
}

/** The dark months' sun of each year as a bar of plain characters, the darkest year marked. */
function picture(read: readonly YearLine[], winter: (year: YearLine) => number): string {
  const values = read.map(winter);
  const most = Math.max(...values);
  const least = Math.min(...values);
  const bars = read.map((year, i) => {
    const bar = '#'.repeat(Math.max(0, Math.round((values[i]! / most) * pictureWidth)));
    const mark = values[i] === least ? '  darkest' : '';
    return `${year.name.slice(-12).padStart(12)}  ${bar} ${figure(values[i]!, 1)}${mark}`;
  });
  return ['Sun of the dark months, kWh/m2', ...bars].join('\n');
}
