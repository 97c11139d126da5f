import { readFileSync } from 'node:fs';

/** What runs in the browser: the view, and the engine for its workers; and the notices of the libraries in them. */
export interface PageCode {
  view: string;
  engine: string;
  notices: string;
}

/**
 * The code of the page as the build made it, from the same packages as the program. It lies in a folder of the package's
 * build; the program's bundle has it within.
 */
export function pageCode(): PageCode {
  const read = (name: string) => readFileSync(new URL(`../page/${name}`, import.meta.url), 'utf8');
  return { view: read('view.js'), engine: read('engine.js'), notices: read('notices.txt') };
}
