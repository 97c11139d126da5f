import type { UnitSystem } from '@wintergap/quantity';
import type { ComparedCost } from '@wintergap/study';
import { type CostTerms, costRows, costSentences, costsKnown } from '../../text/parts/cost.js';
import { moneyUnit } from '../../words/money.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** What designs cost, and for how long. */
export interface PricedDesigns {
  designs: readonly ComparedCost[];
  terms: CostTerms;
}

/** What each design costs; nothing where the site file has no prices. */
export function costSection(designs: readonly ComparedCost[], terms: CostTerms, units: UnitSystem): Markup[] {
  if (!costsKnown(designs)) return [];
  const unit = moneyUnit(terms.currency);
  const columns = [
    { head: 'Design' },
    { head: 'To buy' },
    { head: 'To run', unit: 'a year' },
    { head: 'All', unit: 'a year' },
    { head: terms.years === null ? 'Life cycle' : `${terms.years} years` },
    { head: 'Against base', unit: '90 % sure' },
    { head: 'Bank', unit: 'years' },
  ];
  // A design alone stands against nothing.
  const isShown = (_: unknown, column: number) => designs.length > 1 || column !== 5;
  const table = figuresTable(
    `Cost of ${designs.length > 1 ? 'each' : 'the'} design, ${unit}`,
    columns.filter(isShown),
    costRows(designs).map((row) => row.filter(isShown)),
  );
  return [
    section(
      'cost',
      'What does it cost?',
      html`<p>All that has a price in the site file, with fuel, service and replacements, in present value.</p>
${table}
${costSentences(designs, terms, units).map(
  (sentence) => html`<p>${sentence}</p>
`,
)}`,
    ),
  ];
}
