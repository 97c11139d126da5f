import type { UnitSystem } from '@wintergap/quantity';
import { type WorstSpell, worstSpell, type YearResult } from '@wintergap/year';
import { spellNotes, spellTable } from '../../text/worst.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { figuresTable } from '../sheet/table.js';

/** The dullest fortnight of the year, day by day. */
export function worstSection(result: YearResult, units: UnitSystem, spell: WorstSpell = worstSpell(result)): Markup {
  const [heads, [unitRow = [], ...rows]] = spellTable(spell, units);
  return section(
    'worst',
    `The dullest ${spell.days.length} days`,
    html`${spellNotes(spell).map(
      (sentence) => html`<p>${sentence}</p>
`,
    )}${figuresTable(
      'Sun, load, bank and engine day by day',
      heads.map((head, i) => ({ head: head === '' ? 'Day' : head, ...(unitRow[i] ? { unit: unitRow[i] } : {}) })),
      rows,
      true,
    )}`,
  );
}
