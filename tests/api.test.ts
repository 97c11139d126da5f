import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { apiPage, pagePath, rooms } from '../docs/api.mjs';
import './built-program.js';

test('there are pages of what rooms export', () => {
  expect(rooms.length).toBeGreaterThanOrEqual(15);
  expect(apiPage('ground')).toMatch(/declare function mustLie\(/);
  // A type that an export names, though it is not exported itself, is part of what others rely on.
  expect(apiPage('tally')).toMatch(/Named by these, not exported:[\s\S]*type Contracted/);
});

test.each(rooms)('the page of what %s exports is that of its types; node docs/api.mjs writes it anew', (room) => {
  expect(readFileSync(pagePath(room), 'utf8')).toBe(apiPage(room));
});
