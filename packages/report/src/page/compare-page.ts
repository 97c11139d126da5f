import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, SnowRange } from '@wintergap/study';
import { compareHeadline, type NamedYear } from '../text/compare.js';
import { weatherLine } from '../text/parts/weather-line.js';
import { yearsInWords } from '../words/common-words.js';
import { sharedCautions } from '../words/shared-cautions.js';
import { basisText, placeText } from './sections/basis.js';
import { cautionsSection } from './sections/cautions.js';
import { choiceSection } from './sections/choice.js';
import { costSection, type PricedDesigns } from './sections/costs.js';
import { designMonthsSection, designTable, yearsTable } from './sections/designs.js';
import { systemSection } from './sections/system.js';
import { takenSection } from './sections/taken.js';
import { pageText, section, type Written } from './sheet/frame.js';
import { html } from './sheet/markup.js';

export interface ComparePageSettings {
  /** The same designs in the two extremes of snow; `null` where it never lies on the arrays. */
  snow?: SnowRange | null;
  /** What they cost; without it, or without prices, nothing is said of money. */
  costs?: PricedDesigns | null;
  written?: Written;
}

/** The report of several designs side by side, the first being the base. */
export function comparePage(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  { snow = null, costs = null, written }: ComparePageSettings = {},
): string {
  const base = designs[0]!.result;
  const hasEngine = designs.some(({ result }) => result.summary.generator.hours > 0);
  return pageText({
    title: `${base.site.name}: designs side by side`,
    place: placeText(base, units),
    written,
    answer: [weatherLine(base.weather.judgement ?? null), compareHeadline(designs, answer, snow)].join('\n').trim(),
    sections: [
      choiceSection(designs, answer, units, costs, snow),
      answer.weather.count > 1 &&
        answer.merit === 'generatorHours' &&
        section('years', `Over ${yearsInWords(answer.weather)}`, yearsTable(answer, units)),
      ...(costs ? costSection(costs.designs, costs.terms, units) : []),
      cautionsSection(sharedCautions(designs), units, designs.length),
      section('designs', 'In the year of the file', designTable(designs, units)),
      hasEngine &&
        designMonthsSection(designs, {
          id: 'engine',
          heading: 'When does the engine run?',
          caption: 'Engine hours by month',
          unit: 'h',
          values: ({ summary }) => summary.generator.months.map(({ hours }) => hours),
          fill: 'url(#engine-dots)',
          stroke: 'var(--engine)',
        }),
      designMonthsSection(designs, {
        id: 'offered',
        heading: 'What does the array offer?',
        caption: 'Array energy offered by month',
        unit: 'kWh',
        values: ({ summary }) => summary.array.months.map(({ availableKWh }) => availableKWh),
        fill: 'var(--used)',
        stroke: 'var(--used)',
      }),
      systemSection(base, units),
      ...takenSection(base.site, units),
    ].filter((part) => part !== false),
    foot: html`${basisText(base)}`,
  });
}
