import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { judgeStore, sizeStore, verdictText } from './index.js';

test('the example in the README gives the result printed there', () => {
  const surplusWh = new Float64Array(8760).fill(612_000 / 4380, 0, 4380);
  const demandWh = new Float64Array(8760).fill(380_000 / 4380, 4380);
  const technology = {
    kind: 'own',
    converterIn: { efficiency: 0.7, minimumLoad: 0.1, standbyW: 0 },
    standingLossPerH: 0,
    converterOut: { efficiency: 0.5, minimumLoad: 0, standbyW: 0 },
  } as const;
  const size = sizeStore(surplusWh, demandWh, technology, 0);
  const engine = { fuelLitresPerYear: 230, hoursPerYear: 260, lifeH: 2000 };
  const text = verdictText(judgeStore(size, engine, null), null, 'metric');
  const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
  expect(readme.replace(/\n\/\/ /g, ' ')).toContain(text);
});
