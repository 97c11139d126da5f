import type { Caution } from '@wintergap/tally';
import { section } from './frame.js';
import { html, type Markup } from './markup.js';

/** A caution and, where several designs are shown, the names of those it holds for. */
export interface NamedCaution extends Caution {
  designs?: readonly string[];
}

export function cautionsSection(cautions: readonly NamedCaution[]): Markup {
  const content =
    cautions.length === 0
      ? html`<p>None: no calculated limit is exceeded, and the year raised none.</p>`
      : html`<ul class="cautions">
${cautions.map(
  ({ code, text, designs }) =>
    html`<li><strong>Caution</strong> ${text}. <span class="unit">${code}${designs !== undefined && ` · ${designs.join(', ')}`}</span></li>
`,
)}</ul>`;
  return section('cautions', 'Cautions', content);
}
