import type { UnitSystem } from '@wintergap/quantity';
import { type Site, takenAs } from '@wintergap/site';
import { takenHeading } from '../words/taken-heading.js';
import { section } from './frame.js';
import { html, type Markup } from './markup.js';

/** Every value that the year assumes, with the key that would give it and its source; nothing when the file says all. */
export function takenSection(site: Site, units: UnitSystem): Markup[] {
  const taken = takenAs(site, units);
  if (taken.length === 0) return [];
  const rows = taken.map(
    ({ key, value, text, source }) =>
      html`<tr><th scope="row">${text}</th><td class="words"><code>${value === null ? key : `${key}: ${value}`}</code></td><td class="words">${source}</td></tr>
`,
  );
  const table = html`<div class="scroll" role="region" aria-label="What the year assumes" tabindex="0">
<table><caption>What the year assumes; the key gives another value</caption>
<thead><tr><th scope="col">Taken as</th><th scope="col">Key in the site file</th><th scope="col">Source</th></tr></thead>
<tbody>
${rows}</tbody></table></div>`;
  return [section('taken-as', takenHeading, table)];
}
