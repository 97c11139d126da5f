import type { Chart } from '../../chart/chart.js';
import { prose } from '../../words/prose.js';
import { drawn } from './draw.js';
import { html, type Markup, rawMarkup } from './markup.js';

/** What a colour, hatch or line in a chart means. */
export interface KeyEntry {
  text: string;
  mark: Mark;
}

export type Mark =
  | { kind: 'fill'; fill: string }
  | { kind: 'line'; stroke: string; dash?: string }
  | { kind: 'dot'; stroke: string };

export interface Figure {
  id: string;
  /** The chart for a phone (`narrow`) or for a wider screen and paper. */
  chart: (narrow: boolean) => Chart;
  key: readonly KeyEntry[];
  caption: string;
  /** The same figures as a table, folded away. */
  table?: Markup;
}

/**
 * A chart with its key, its caption and its figures as a table. It is drawn twice, for narrow and wide screens, because
 * a drawing that only shrinks has letters nobody can read; one of the two is always hidden.
 */
export function chartFigure({ id, chart, key, caption, table }: Figure): Markup {
  return html`<figure id="${id}">
${key.length > 0 && html`<ul class="key">${key.map(keyItem)}</ul>`}
<div class="wide">${rawMarkup(drawn(chart(false)))}</div>
<div class="narrow">${rawMarkup(drawn(chart(true)))}</div>
<figcaption>${prose(caption)}</figcaption>
${table !== undefined && html`<details><summary>The figures of this chart</summary>${table}</details>`}
</figure>`;
}

const keyItem = ({ text, mark }: KeyEntry): Markup => html`<li>${swatch(mark)} ${text}</li>`;

function swatch(mark: Mark): Markup {
  const drawn =
    mark.kind === 'fill'
      ? html`<rect x="1" y="1" width="20" height="10" fill="${mark.fill}" stroke="var(--quiet)" stroke-width="0.5"/>`
      : mark.kind === 'line'
        ? html`<line x1="0" x2="22" y1="6" y2="6" stroke="${mark.stroke}" stroke-width="2.5" stroke-dasharray="${mark.dash ?? 'none'}"/>`
        : html`<circle cx="5" cy="6" r="2" fill="none" stroke="${mark.stroke}" stroke-width="1.3"/><circle cx="16" cy="6" r="2" fill="none" stroke="${mark.stroke}" stroke-width="1.3"/>`;
  return html`<svg class="swatch" viewBox="0 0 22 12" width="22" height="12" aria-hidden="true">${drawn}</svg>`;
}
