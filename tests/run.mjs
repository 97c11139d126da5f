// `npm test`: all tests that take seconds; the long ones and those in a browser have commands of their own.
// With paths or parts of them it runs the files of those names, whichever they are:  npm test tests/long/sweep
import { spawnSync } from 'node:child_process';

const given = process.argv.slice(2);
const named = given.some((word) => !word.startsWith('-'));
const quick = named ? [] : ['--project', 'units', '--project', 'whole'];
const { status } = spawnSync('npx', ['--no-install', 'vitest', 'run', ...quick, ...given], { stdio: 'inherit' });
process.exit(status ?? 1);
