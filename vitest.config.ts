import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const packages = fileURLToPath(new URL('packages/', import.meta.url));

// Tests run on the sources, so a test never passes on a stale build.
export default defineConfig({
  resolve: {
    alias: [
      { find: '#unit-library', replacement: `${packages}quantity/src/unit-library.ts` },
      { find: /^@wintergap\/site\/fields$/, replacement: `${packages}site/src/schema/fields.ts` },
      { find: /^@wintergap\/report\/in-page$/, replacement: `${packages}report/src/in-page.ts` },
      { find: /^@wintergap\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` },
    ],
  },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'tests/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    // Beside the usual lines: VALIDATION.md is held against what the published tests found.
    reporters: ['default', './tests/validation/reporter.ts'],
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
});
