import { monthInWords, monthNames } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer } from '@wintergap/study';
import type { YearResult } from '@wintergap/year';
import { monthBarsChart } from '../../chart/month-bars.js';
import type { NamedYear } from '../../text/compare.js';
import { hoursDifferenceInWords } from '../../words/common-words.js';
import { figure, percent } from '../../words/figures.js';
import { lowestByMonth } from '../../words/lowest-by-month.js';
import { inVolumeUnit, volumeUnit } from '../../words/shown-units.js';
import { drawn } from '../sheet/draw.js';
import { section } from '../sheet/frame.js';
import { html, type Markup, rawMarkup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** What the common years say of each design, and of its difference from the base. */
export function yearsTable({ designs }: CommonAnswer, units: UnitSystem): Markup {
  const rows = designs.map(({ name, ranked, generatorHours, fuelLitres, againstBase }) => [
    name,
    figure(ranked.generatorHours.usual.value),
    figure(ranked.generatorHours.oneInTen.value),
    figure(generatorHours.mean),
    figure(inVolumeUnit(fuelLitres.mean, units)),
    againstBase ? hoursDifferenceInWords(againstBase.generatorHours) : '',
  ]);
  return figuresTable(
    'Engine hours of each design over the same weather years',
    [
      { head: 'Design' },
      { head: 'Usual year', unit: 'h' },
      { head: 'One year in ten', unit: 'h or more' },
      { head: 'Mean', unit: 'h' },
      { head: 'Fuel, mean', unit: volumeUnit(units) },
      { head: 'Against the base', unit: '90 % sure' },
    ],
    rows,
  );
}

/** The year's totals of each design, and what differs from the base. */
export function designTable(designs: readonly NamedYear[], units: UnitSystem): Markup {
  const base = designs[0]!.result.summary.generator;
  const darkMonth = designs[0]!.result.summary.darkSeason.month;
  const rows = designs.map(({ name, result: { summary, ledger } }, i) => {
    const { hours, starts, fuelLitres } = summary.generator;
    const fuel = inVolumeUnit(fuelLitres, units);
    return [
      name,
      figure(hours),
      i === 0 ? '' : signed(hours - base.hours),
      figure(starts, 0),
      figure(fuel),
      i === 0 ? '' : signed(fuel - inVolumeUnit(base.fuelLitres, units)),
      figure(summary.array.availableKWh),
      figure(summary.throttle.kWh),
      figure(summary.load.darkKWh),
      percent(lowestByMonth(ledger.lowestStateOfCharge)[darkMonth - 1]!),
      figure(summary.bank.autonomyDays),
    ];
  });
  return figuresTable(
    'The year of each design',
    [
      { head: 'Design' },
      { head: 'Engine', unit: 'h' },
      { head: 'Against base', unit: 'h' },
      { head: 'Starts', unit: '' },
      { head: 'Fuel', unit: volumeUnit(units) },
      { head: 'Against base', unit: volumeUnit(units) },
      { head: 'Array offered', unit: 'kWh' },
      { head: 'Thrown away', unit: 'kWh' },
      { head: 'Dark load', unit: 'kWh' },
      { head: `${monthInWords(darkMonth)} lowest`, unit: '' },
      { head: 'Autonomy', unit: 'days' },
    ],
    rows,
  );
}

export interface DesignMonths {
  id: string;
  heading: string;
  caption: string;
  unit: string;
  values: (result: YearResult) => readonly number[];
  fill: string;
  stroke: string;
}

/** One small chart of twelve months for each design, all on one scale, and the figures as a table. */
export function designMonthsSection(
  designs: readonly NamedYear[],
  { id, heading, caption, unit, values, fill, stroke }: DesignMonths,
): Markup {
  const named = designs.map(({ name, result }) => ({ name, months: values(result) }));
  const base = named[0]!.months;
  const top = Math.max(1, ...named.flatMap(({ months }) => months));
  const total = (months: readonly number[]) => months.reduce((sum, value) => sum + value, 0);
  const charts = named.map(({ name, months }, i) => {
    const label = `${caption} of the design ${name}`;
    const against = i === 0 ? {} : { base };
    const svg = drawn(monthBarsChart({ label, unit, values: months, ...against, top, fill, stroke }));
    return html`<figure data-design="${name}"><h3>${name}</h3>
${rawMarkup(svg)}
<figcaption>${figure(total(months))} ${unit} in the year</figcaption></figure>
`;
  });
  const rows = named.map(({ name, months }) => [
    name,
    ...months.map((value) => (value === 0 ? '–' : figure(value, unit === 'h' ? 1 : 0))),
    figure(total(months)),
  ]);
  const columns = [{ head: 'Design' }, ...monthNames.map((head) => ({ head })), { head: 'Year' }];
  return section(
    id,
    heading,
    html`<p>${caption}, ${unit}. ${designs.length > 1 && 'The bars across the columns are the base.'}</p>
<div class="designs">${charts}</div>
${figuresTable(`${caption}, ${unit}`, columns, rows)}`,
  );
}

const signed = (value: number) => (Math.abs(value) < 0.05 ? '0' : `${value > 0 ? '+' : '−'}${figure(Math.abs(value))}`);
