/** Text that is markup already; everything else is escaped on its way into a page. */
export interface Markup {
  readonly markup: string;
}

/** What may stand in a template: `null` and `false` leave nothing behind, a list stands one after another. */
export type Piece = string | number | Markup | null | false | readonly Piece[];

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Text as it may stand between tags and inside quoted attributes. */
export const escapeText = (text: string): string => text.replace(/[&<>"']/g, (character) => entities[character]!);

/** Markup that is known to be well-formed, such as a chart that was drawn. */
export const rawMarkup = (markup: string): Markup => ({ markup });

/** A piece of a page: html`<p>${name}</p>` escapes what it is given, unless that is markup itself. */
export function html(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  let markup = parts[0]!;
  pieces.forEach((piece, i) => {
    markup += pieceText(piece) + parts[i + 1]!;
  });
  return { markup };
}

function pieceText(piece: Piece): string {
  if (piece === null || piece === false) return '';
  if (typeof piece === 'string' || typeof piece === 'number') return escapeText(String(piece));
  return 'markup' in piece ? piece.markup : piece.map(pieceText).join('');
}
