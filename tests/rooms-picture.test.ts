import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
// @ts-expect-error a plain script without types
import { roomsPicture } from '../docs/rooms.mjs';

test('the picture of the rooms is what their manifests say (node docs/rooms.mjs draws it anew)', () => {
  expect(readFileSync(new URL('../docs/rooms.svg', import.meta.url), 'utf8')).toBe(roomsPicture());
});
