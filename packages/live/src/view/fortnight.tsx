import type { UnitSystem } from '@wintergap/quantity';
import { spellNotes, spellTable } from '@wintergap/report/in-page';
import type { WorstSpell } from '@wintergap/year';
import type { VNode } from 'preact';
import { Scroll } from './scroll.js';

/** The fortnight with the least sun for the load, day by day: the table of `year --worst`. */
export function Fortnight({ spell, units }: { spell: WorstSpell; units: UnitSystem }): VNode {
  const [heads, [unitRow = [], ...rows]] = spellTable(spell, units);
  return (
    <div class="day" id="fortnight">
      <h3>The dullest {spell.days.length} days</h3>
      {spellNotes(spell).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Scroll label="The dullest days, day by day">
        <table>
          <thead>
            <tr>
              {heads.map((head, i) => (
                <th key={head} scope="col">
                  {head === '' ? 'Day' : head} {unitRow[i] && <span class="unit">{unitRow[i]}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name = '', ...cells]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((cell, i) => (
                  <td key={heads[i + 1]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </div>
  );
}
