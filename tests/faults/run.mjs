// A long run of damaged files:  npm run faults -- --cases 10000 --seed 1
import { spawnSync } from 'node:child_process';
import { parseArgs } from 'node:util';

const { values } = parseArgs({ options: { cases: { type: 'string' }, seed: { type: 'string' } } });
const { status } = spawnSync('npx', ['vitest', 'run', 'tests/faults', '--testTimeout', '36000000'], {
  stdio: 'inherit',
  env: { ...process.env, FAULT_CASES: values.cases ?? '1000', FAULT_SEED: values.seed ?? '1' },
});
process.exit(status ?? 1);
