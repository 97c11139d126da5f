import type { UnitSystem } from '@wintergap/quantity';
import type { CommonAnswer, ComparedCost, SnowRange } from '@wintergap/study';
import { compareHeadline, type NamedYear } from '../text/compare.js';
import type { CostTerms } from '../text/parts/cost.js';
import { weatherLine } from '../text/parts/weather-line.js';
import { yearsInWords } from '../words/common-words.js';
import { basisText, placeText } from './basis.js';
import { cautionsSection, type NamedCaution } from './cautions.js';
import { costSection } from './costs.js';
import { designMonthsSection, designTable, yearsTable } from './designs.js';
import { pageText, section } from './frame.js';
import { html } from './markup.js';

/** The report of several designs side by side, the first being the base. */
export function comparePage(
  designs: readonly NamedYear[],
  answer: CommonAnswer,
  units: UnitSystem,
  snow: SnowRange | null = null,
  costs: { designs: readonly ComparedCost[]; terms: CostTerms } | null = null,
): string {
  const base = designs[0]!.result;
  const hasEngine = designs.some(({ result }) => result.summary.generator.hours > 0);
  return pageText({
    title: `${base.site.name}: designs side by side`,
    place: placeText(base, units),
    answer: [weatherLine(base.weather.judgement ?? null), compareHeadline(designs, answer, snow)].join('\n').trim(),
    sections: [
      answer.weather.count > 1 &&
        answer.merit === 'generatorHours' &&
        section('years', `Over ${yearsInWords(answer.weather)}`, yearsTable(answer, units)),
      ...(costs ? costSection(costs.designs, costs.terms, units) : []),
      cautionsSection(sharedCautions(designs), units),
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
    ].filter((part) => part !== false),
    foot: html`${basisText(base)}`,
  });
}

/** Every caution once, with the designs it holds for. */
function sharedCautions(designs: readonly NamedYear[]): NamedCaution[] {
  const found = new Map<string, NamedCaution & { designs: string[] }>();
  for (const { name, result } of designs) {
    for (const { code, text } of result.summary.cautions) {
      const key = `${code} ${text}`;
      const caution = found.get(key) ?? { code, text, designs: [] };
      caution.designs.push(name);
      found.set(key, caution);
    }
  }
  return [...found.values()];
}
