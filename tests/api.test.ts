import { readdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, test } from 'vitest';
import { apiPages, modules, pagePath } from '../docs/api.mjs';

const pages = apiPages();

test('there is a page of each module that can be imported, and no other', () => {
  expect(modules).toEqual(expect.arrayContaining(['ground', 'year', 'site', 'site/fields', 'report/in-page']));
  expect(readdirSync(dirname(pagePath('ground')))).toHaveLength(modules.length);
  expect(pages.get('ground')).toMatch(/export function mustLie\(/);
  // A type that an export names, though it is not exported itself, is part of what others rely on.
  expect(pages.get('tally')).toMatch(/^type Contracted/m);
});

test.each(modules)('the page of what %s exports is that of its types; node docs/api.mjs writes it anew', (module) => {
  expect(readFileSync(pagePath(module), 'utf8')).toBe(pages.get(module));
});
