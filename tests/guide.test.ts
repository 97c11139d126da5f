import { expect, test } from 'vitest';
// @ts-expect-error a plain script without types
import { pageNow, pages } from '../docs/guide-outputs.mjs';

test.each(pages as string[])(
  'docs/guide/%s shows what its commands print',
  (page) => {
    const { stands, now } = pageNow(page);
    expect(now, 'node docs/guide-outputs.mjs --write puts in what is printed').toBe(stands);
  },
  600_000,
);
