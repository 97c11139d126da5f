import { readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Reporter, TestModule } from 'vitest/node';
import type { Held } from './hold.js';
import { validationPage } from './page.js';

const page = new URL('../../VALIDATION.md', import.meta.url);

/**
 * Makes VALIDATION.md of what the tests in `tests/published` held against published values. In a run of all of them a
 * page that says something else fails the run; with WINTERGAP_VALIDATION=write the page is written instead.
 */
export default class ValidationReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const published = modules.filter(({ moduleId }) => moduleId.includes('/tests/published/'));
    if (published.length === 0) return;
    const tests = published.flatMap((module) => [...module.children.allTests()]);
    const sections = published
      .map((module) => ({
        name: basename(module.moduleId, '.test.ts'),
        held: [...module.children.allTests()].flatMap((test) => (test.meta() as { held?: Held[] }).held ?? []),
      }))
      .sort((a, b) => (a.name < b.name ? -1 : 1));
    if (process.env.WINTERGAP_VALIDATION === 'write') {
      writeFileSync(page, validationPage(sections));
      return;
    }
    const missing = linesMissing(readFileSync(page, 'utf8'), validationPage(sections));
    if (missing.length === 0 || tests.some((test) => test.result().state === 'failed')) return;
    console.error(
      `VALIDATION.md does not say what its tests found (npm run validation writes it anew):\n${missing.join('\n')}`,
    );
    process.exitCode = 1;
  }
}

/** Lines that the tests give and the page lacks; a test that was skipped gives none. */
function linesMissing(stands: string, made: string): string[] {
  const lines = new Set(stands.split('\n'));
  return made.split('\n').filter((line) => line.startsWith('|') && !lines.has(line));
}
