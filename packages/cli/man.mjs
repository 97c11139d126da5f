// Writes the manual page of the program from its help: npm run man, then man -l packages/cli/bundle/wintergap.1
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle-parts.mjs';
import { manPage } from './dist/manual/man-page.js';
import { createProgram } from './dist/program.js';

writeFileSync(join(root, 'packages/cli/bundle/wintergap.1'), manPage(createProgram()));
