import { readFileSync } from 'node:fs';
import { parseSite } from '@wintergap/site';
import { expect, test } from 'vitest';
import { designCount, wholeSweep } from '../design/order.js';
import { planSweep } from './plan.js';

const root = new URL('../../../../', import.meta.url);
const example = readFileSync(new URL('examples/kettle-pond.yaml', root), 'utf8').replace(/^sweep:\n([ #].*\n)+/m, '');
const readme = readFileSync(new URL('packages/study/README.md', root), 'utf8');

test('the sweep section of the README makes as many designs as it says', () => {
  const section = /```yaml\n(sweep:\n[\s\S]*?)```/.exec(readme)?.[1];
  expect(section).toBeDefined();
  const { order } = planSweep(
    parseSite(`${example}\n${section}`, new URL('examples/site.yaml', root).pathname),
    wholeSweep,
  );
  expect(order.gridSize).toBe(56);
  expect(section).toContain('of the 56');
  expect(readme).toContain(`designCount(plan.order); // ${designCount(order)}`);
});
