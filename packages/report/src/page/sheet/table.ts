import { html, type Markup, type Piece } from './markup.js';

export interface Column {
  head: string;
  unit?: string;
}

/**
 * A table of figures: the first column names the row, the others are right-aligned. It scrolls sideways by itself on a
 * narrow screen, so that the page does not.
 *
 * @param lastIsSum sets the last row off as the sum of the others
 */
export function figuresTable(
  caption: string,
  columns: readonly Column[],
  rows: readonly (readonly Piece[])[],
  lastIsSum = false,
): Markup {
  const head = columns.map(
    ({ head, unit }) =>
      html`<th scope="col">${head}${unit !== undefined && html` <span class="unit">${unit}</span>`}</th>`,
  );
  const body = rows.map(
    ([name = '', ...cells], i) =>
      html`<tr${lastIsSum && i === rows.length - 1 && html` class="sum"`}><th scope="row">${name}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>
`,
  );
  return scrolling(
    caption,
    html`<thead><tr>${head}</tr></thead>
<tbody>
${body}</tbody>`,
  );
}

/** A table of words: the first column names the row, the others are sentences. */
export function wordsTable(caption: string, heads: readonly string[], rows: readonly (readonly Piece[])[]): Markup {
  const body = rows.map(
    ([name = '', ...cells]) =>
      html`<tr><th scope="row">${name}</th>${cells.map((cell) => html`<td class="words">${cell}</td>`)}</tr>
`,
  );
  return scrolling(
    caption,
    html`<thead><tr>${heads.map((head, i) => html`<th scope="col"${i > 0 && html` class="words"`}>${head}</th>`)}</tr></thead>
<tbody>
${body}</tbody>`,
  );
}

/** A table that goes on sideways where the screen is narrow: its edge is shaded on the side on which there is more. */
function scrolling(caption: string, content: Markup): Markup {
  return html`<div class="scroll" role="region" aria-label="${caption}" tabindex="0">
<table><caption>${caption}</caption>
${content}</table></div>`;
}
