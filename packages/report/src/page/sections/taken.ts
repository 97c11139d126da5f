import type { UnitSystem } from '@wintergap/quantity';
import { type Site, takenAs } from '@wintergap/site';
import { takenHeading } from '../../words/taken-heading.js';
import { section } from '../sheet/frame.js';
import { html, type Markup } from '../sheet/markup.js';
import { wordsTable } from '../sheet/table.js';

/** Every value that the year assumes, with the key that would give it and its source; nothing when the file says all. */
export function takenSection(site: Site, units: UnitSystem): Markup[] {
  const taken = takenAs(site, units);
  if (taken.length === 0) return [];
  const rows = taken.map(({ key, value, text, source }) => [
    text,
    html`<code>${value === null ? key : `${key}: ${value}`}</code>`,
    source,
  ]);
  const table = wordsTable(
    'What the year assumes; the key gives another value',
    ['Taken as', 'Key in the site file', 'Source'],
    rows,
  );
  return [section('taken-as', takenHeading, table)];
}
