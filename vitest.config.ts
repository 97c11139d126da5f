import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const packages = fileURLToPath(new URL('packages/', import.meta.url));

/** Unit tests run on the sources of all packages. */
export const sources = [
  { find: '#unit-library', replacement: `${packages}quantity/src/unit-library.ts` },
  { find: /^@wintergap\/site\/fields$/, replacement: `${packages}site/src/schema/fields.ts` },
  { find: /^@wintergap\/report\/in-page$/, replacement: `${packages}report/src/in-page.ts` },
  { find: /^@wintergap\/([a-z]+)$/, replacement: `${packages}$1/src/index.ts` },
];

/** Tests of the whole run on the packages as built, on which a year takes half the time. */
const built = [
  { find: /^(?:\.\.\/)+packages\/([a-z]+)\/src\/(?!.*\.fixture\.js$)/, replacement: `${packages}$1/dist/` },
];

/** Settings of all tests. */
export const everywhere = {
  setupFiles: ['tests/setup.ts'],
  testTimeout: 180_000,
  hookTimeout: 180_000,
  // Files share a worker and what it has loaded: to load the packages anew for each takes longer than most of the tests.
  isolate: false,
};

/** What takes more than some three seconds of a processor: studies of many years, and the program started many times over. */
const long = [
  'api',
  'carry',
  'common-years',
  'docs-site',
  'guide',
  'library',
  'mount',
  'one-definition',
  'outlook',
  'outputs',
  'page-width',
  'prices',
  'published/next-year',
  'shown-commands',
  'size',
  'sweep',
  'twin/twin',
  'weigh',
].map((name) => `tests/${name}.test.ts`);
const browser = ['tests/browser/**/*.test.ts'];

/** A group of tests of the whole. A stale build is refused, so that none passes on one. */
const group = (name: string, include: string[], exclude: string[] = []) => ({
  resolve: { alias: built },
  test: {
    ...everywhere,
    name,
    include,
    exclude,
    globalSetup: ['tests/built-first.ts'],
    server: { deps: { external: [/\/packages\/[a-z]+\/dist\//] } },
  },
});

// `npm test` runs `units` and `whole`, `npm run test:long` and `npm run test:browser` the others, `npm run test:all` all.
export default defineConfig({
  test: {
    // All processors: by itself one is left free, and of two that is half.
    maxWorkers: '100%',
    // Beside the usual lines: VALIDATION.md is held against what the published tests found.
    reporters: ['default', './tests/validation/reporter.ts'],
    projects: [
      { resolve: { alias: sources }, test: { ...everywhere, name: 'units', include: ['packages/*/src/**/*.test.ts'] } },
      group('whole', ['tests/**/*.test.ts'], [...long, ...browser]),
      group('long', long),
      group('browser', browser),
    ],
  },
});
