import { daysInMonth, monthInWords, monthNames } from '@wintergap/ground';
import { formatQuantity, type UnitSystem } from '@wintergap/quantity';
import type { WeatherReport } from '@wintergap/weather';
import { darkSeasonOf } from '@wintergap/year';
import { figure, wrap } from '../words/figures.js';
import { inShownUnits } from '../words/shown-units.js';
import { plainTable } from './parts/plain-table.js';

const forms = {
  epw: 'an EPW file',
  tmy3: 'a TMY3 file',
  table: 'a plain table',
  power: 'a table of the POWER service',
  made: 'made from monthly means',
};

/** What a weather file holds and whether to trust it, 80 columns, verdict first. */
export function weatherText(report: WeatherReport, units: UnitSystem): string {
  const { month: dark } = darkSeasonOf(
    report.months.map(({ ghiKWhM2 }) => ghiKWhM2),
    daysInMonth,
  );
  const notices = report.notices.map(({ level, text }) => wrap(`  ${level}: ${inShownUnits(text, units)}`, 80, '    '));
  return [
    wrap(
      `${report.line}. ${figure(report.year.ghiKWhM2, 0)} kWh/m2 of sun in the year, ${figure(report.months[dark - 1]!.ghiKWhM2, 0)} in ${monthInWords(dark)}.`,
    ),
    placeText(report, units),
    monthsTable(report, units),
    [
      ...(report.timing ? [`Sun in the file against the clock: ${lateText(report.timing.lateMin)}`] : []),
      ...(notices.length > 0 ? ['Notices', ...notices] : ['No notices.']),
    ].join('\n'),
  ].join('\n\n');
}

function placeText({ kind, place }: WeatherReport, units: UnitSystem): string {
  const known = [
    forms[kind],
    place.name,
    place.latitudeDeg !== undefined && place.longitudeDeg !== undefined
      ? `${place.latitudeDeg}, ${place.longitudeDeg} (north, east positive)`
      : 'place not stated',
    place.utcOffsetH !== undefined ? `UTC${place.utcOffsetH < 0 ? '' : '+'}${place.utcOffsetH} h` : undefined,
    place.elevationM !== undefined ? formatQuantity(place.elevationM, 'length', units) : undefined,
  ].filter((part) => part !== undefined);
  return wrap(known.join('; '));
}

function monthsTable({ months, year }: WeatherReport, units: UnitSystem): string {
  const warm = (celsius: number) => figure(units === 'us' ? celsius * 1.8 + 32 : celsius, 1);
  const wind = (speed: number) => figure(units === 'us' ? speed / 0.44704 : speed, 1);
  const head = ['', 'global', 'beam', 'diffuse', 'air', 'air', 'air', 'wind', 'snow'];
  const unit = [
    '',
    'kWh/m2',
    'kWh/m2',
    'kWh/m2',
    ...(units === 'us' ? ['mean degF', 'min', 'max', 'mph', 'in'] : ['mean degC', 'min', 'max', 'm/s', 'cm']),
  ];
  const rows = [...months, year].map((sums, i) => [
    monthNames[i] ?? 'Year',
    figure(sums.ghiKWhM2, 0),
    figure(sums.dniKWhM2, 0),
    figure(sums.dhiKWhM2, 0),
    warm(sums.meanAirC),
    warm(sums.minAirC),
    warm(sums.maxAirC),
    wind(sums.meanWindMs),
    sums.maxSnowDepthM === null
      ? '-'
      : figure(units === 'us' ? sums.maxSnowDepthM / 0.0254 : sums.maxSnowDepthM * 100, 0),
  ]);
  return plainTable(head, [unit, ...rows]);
}

const lateText = (minutes: number) => `${figure(Math.abs(minutes), 0)} min ${minutes < 0 ? 'early' : 'late'}`;
