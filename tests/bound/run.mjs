// The least that each example's engine could have given, hour by hour:  npm run bound
// Writes bounds.jsonl and the table of README.md. Some five seconds a site.
import { spawnSync } from 'node:child_process';

const { status } = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/bound', '-t', 'hour by hour', '--testTimeout', '36000000'],
  {
    stdio: 'inherit',
    env: { ...process.env, BOUND_SITES: 'all' },
  },
);
process.exit(status ?? 1);
