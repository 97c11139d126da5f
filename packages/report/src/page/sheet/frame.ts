import { safetyNotice } from '../../text/check.js';
import { prose } from '../../words/prose.js';
import { html, type Markup, rawMarkup } from './markup.js';
import { patterns } from './patterns.js';
import { styleSheet } from './style.js';

/** What a page was written from, and on which day. */
export interface Written {
  /** Name of the site file. */
  from: string;
  /** The day, such as `27 November 2026`. */
  on: string;
}

export interface PageParts {
  title: string;
  /** Under the title: where, with what weather. */
  place: string;
  /** When it was written and from which file, where that is known. */
  written?: Written | undefined;
  /** The sentences that answer. */
  answer: string;
  sections: readonly Markup[];
  /** At the very end: what the figures rest on. */
  foot: Markup;
}

/**
 * A whole page in one file. The policy in its head forbids it to load anything, so it stays what it was when written,
 * whether it is opened from a disk or a mail.
 */
export function pageText({ title, place, written, answer, sections, foot }: PageParts): string {
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="icon" href="data:,">
<style>${rawMarkup(styleSheet)}</style>
</head>
<body>
${rawMarkup(patterns)}
<header>
<h1>${title}</h1>
<p class="place">${prose(place)}</p>
${written !== undefined && html`<p class="place">Written on ${written.on} from ${written.from}</p>`}
</header>
<main>
<p class="answer">${prose(answer)}</p>
${sections.map((part) => html`${part}\n`)}
${section('safety', 'Before anything is built', html`<p class="safety">${safetyNotice}</p>`)}
</main>
<footer>${foot}</footer>
</body>
</html>
`;
  return page.markup;
}

/** A part of the page under its own heading. */
export function section(id: string, heading: string, content: Markup): Markup {
  return html`<section aria-labelledby="${id}"><h2 id="${id}">${heading}</h2>
${content}
</section>`;
}
