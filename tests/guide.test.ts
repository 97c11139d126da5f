import { expect, test } from 'vitest';
// @ts-expect-error a plain script without types
import { pageNow, pages } from '../docs/guide-outputs.mjs';

// A minute or more of whole commands: in CI, or when asked for.
const asked = process.env.CI === 'true' || process.env.WINTERGAP_GUIDE === '1';
if (!asked) console.info('what docs/guide shows is held against the program in CI, or with WINTERGAP_GUIDE=1');

test.skipIf(!asked).each(pages as string[])(
  `docs/guide/%s shows what its commands print${asked ? '' : ' (skipped: WINTERGAP_GUIDE=1 runs it)'}`,
  (page) => {
    const { stands, now } = pageNow(page);
    expect(now, 'node docs/guide-outputs.mjs --write puts in what is printed').toBe(stands);
  },
  600_000,
);
