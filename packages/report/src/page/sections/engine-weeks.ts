import { dateOfDay, daysPerYear } from '@wintergap/ground';
import type { UnitSystem } from '@wintergap/quantity';
import { longestDaysBetween, yearSum } from '@wintergap/tally';
import type { YearResult } from '@wintergap/year';
import { type EngineWeek, weeksChart } from '../../chart/weeks.js';
import { count, dateText, figure } from '../../words/figures.js';
import { inVolumeUnit, volumeText, volumeUnit } from '../../words/shown-units.js';
import { chartFigure } from '../sheet/figure.js';
import { section } from '../sheet/frame.js';
import type { Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

const weeksInYear = 52;

/** The engine by weeks of seven days; the last one has the year's odd day. */
export function engineWeeks({ ledger }: Pick<YearResult, 'ledger'>): EngineWeek[] {
  return Array.from({ length: weeksInYear }, (_, week) => {
    const fromDay = week * 7;
    const toDay = week === weeksInYear - 1 ? daysPerYear : fromDay + 7;
    const of = (hourly: Float64Array) => yearSum(hourly.subarray(fromDay * 24, toDay * 24));
    return { fromDay, toDay, hours: of(ledger.generatorH), starts: of(ledger.starts), litres: of(ledger.fuelL) };
  });
}

/** In which weeks the engine runs and fuel is needed; nothing for a design without an engine. */
export function engineWeeksSection(result: YearResult, units: UnitSystem): Markup[] {
  const { generator } = result.summary;
  if (!result.site.generator || generator.hours === 0) return [];
  const weeks = engineWeeks(result);
  const running = weeks.filter(({ hours }) => hours > 0);
  const most = running.reduce((busiest, week) => (week.hours > busiest.hours ? week : busiest));
  const rest = longestDaysBetween(result.ledger.generatorH);
  const from = ({ fromDay }: EngineWeek) => dateText(dateOfDay(fromDay));
  return [
    section(
      'engine-weeks',
      'When does the engine run?',
      chartFigure({
        id: 'engine-weeks-chart',
        chart: (narrow) => weeksChart(weeks, narrow),
        key: [{ text: 'engine, hours of the week', mark: { kind: 'fill', fill: 'var(--engine)' } }],
        caption: `In the year of the file it runs in ${count(running.length, 'week')} of ${weeksInYear}, most in the week from ${from(most)}: ${figure(most.hours)} h and ${volumeText(most.litres, units)}.${rest === null ? '' : ` The longest rest between runs is ${figure(rest)} days.`}`,
        table: figuresTable(
          'Weeks in which the engine runs',
          [
            { head: 'Week from' },
            { head: 'Engine', unit: 'h' },
            { head: 'Starts', unit: '' },
            { head: 'Fuel', unit: volumeUnit(units) },
          ],
          running.map((week) => [
            from(week),
            figure(week.hours),
            figure(week.starts, 0),
            figure(inVolumeUnit(week.litres, units)),
          ]),
        ),
      }),
    ),
  ];
}
