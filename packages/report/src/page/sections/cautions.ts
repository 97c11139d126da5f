import type { UnitSystem } from '@wintergap/quantity';
import { designsInWords, type NamedCaution } from '../../words/shared-cautions.js';
import { inShownUnits } from '../../words/shown-units.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';

/** @param of how many designs the page is about */
export function cautionsSection(cautions: readonly NamedCaution[], units: UnitSystem, of = 1): Markup {
  const content =
    cautions.length === 0
      ? html`<p>None: no calculated limit is exceeded, and the year raised none.</p>`
      : html`<ul class="cautions">
${cautions.map(
  ({ text, designs }) =>
    html`<li><strong>Caution</strong> ${inShownUnits(text, units)}.${designs !== undefined && html` <span class="unit">${designsInWords(designs, of)}</span>`}</li>
`,
)}</ul>`;
  return section('cautions', 'Cautions', content);
}
