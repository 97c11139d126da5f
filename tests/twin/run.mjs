// Random designs through the packages and through the twin:  npm run twin -- --designs 1..50 --place "Kettle Pond"
// Writes figures.jsonl and the tables of README.md. Some three seconds a design; without --place at all places.
import { spawnSync } from 'node:child_process';
import { parseArgs } from 'node:util';

const { values } = parseArgs({ options: { designs: { type: 'string' }, place: { type: 'string' } } });
const { status } = spawnSync(
  'npx',
  ['vitest', 'run', 'tests/twin/twin.test.ts', '-t', 'all designs', '--testTimeout', '36000000'],
  {
    stdio: 'inherit',
    env: { ...process.env, TWIN_DESIGNS: values.designs ?? '1..50', ...(values.place && { TWIN_PLACE: values.place }) },
  },
);
process.exit(status ?? 1);
