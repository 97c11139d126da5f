import type { UnitSystem } from '@wintergap/quantity';
import type { Caution } from '@wintergap/tally';
import { inShownUnits } from '../words/shown-units.js';
import { section } from './frame.js';
import { html, type Markup } from './markup.js';

/** A caution and, where several designs are shown, the names of those it holds for. */
export interface NamedCaution extends Caution {
  designs?: readonly string[];
}

export function cautionsSection(cautions: readonly NamedCaution[], units: UnitSystem): Markup {
  const content =
    cautions.length === 0
      ? html`<p>None: no calculated limit is exceeded, and the year raised none.</p>`
      : html`<ul class="cautions">
${cautions.map(
  ({ text, designs }) =>
    html`<li><strong>Caution</strong> ${inShownUnits(text, units)}.${designs !== undefined && html` <span class="unit">${designs.join(', ')}</span>`}</li>
`,
)}</ul>`;
  return section('cautions', 'Cautions', content);
}
