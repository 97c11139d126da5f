import { expect, test } from 'vitest';
import { discharge, dischargeCellV, restCellV } from './discharge.js';

// Copetti et al. (1993) by hand for 100 Ah at 5 A, 25 degC, 50 % removed of C10. C(5 A) = 1.67/(1 + 0.67 x 0.5^0.9)
// = 1.2286 C10, so SOC = 1 - 0.5/1.2286 = 0.5930; rest at the lower of the two states 2.025 V;
// drop 0.05 (4/(1 + 5^1.3) + 0.27/0.5930^1.5 + 0.02) = 0.05 (0.4394 + 0.5913 + 0.02) = 0.0525 V.
test('matches the discharge equation worked by hand', () => {
  expect(dischargeCellV(0.5, discharge(0.05, 25, 1))).toBeCloseTo(2.025 - 0.0525, 3);
});

test('voltage falls with current, with cold and as the cell empties, and never passes the rest voltage', () => {
  const broken: string[] = [];
  for (let tempC = -50; tempC <= 60; tempC += 10) {
    for (let j = 1; j <= 40; j++) {
      const at = discharge((j / 40) ** 3, tempC, 1);
      const more = discharge(((j + 1) / 40) ** 3, tempC, 1);
      const warmer = discharge((j / 40) ** 3, tempC + 5, 1);
      let last = 0;
      for (let k = 0; k <= 50; k++) {
        const s = k / 50;
        const cellV = dischargeCellV(s, at);
        if (!(cellV >= last && cellV <= restCellV(s))) broken.push(`state ${s} rate ${j} at ${tempC} degC`);
        if (!(dischargeCellV(s, more) <= cellV)) broken.push(`state ${s} rate ${j} and more at ${tempC} degC`);
        if (!(dischargeCellV(s, warmer) >= cellV)) broken.push(`state ${s} rate ${j} at ${tempC} degC and warmer`);
        last = cellV;
      }
    }
  }
  expect(broken).toEqual([]);
});

test('a cell of half the resistance drops half as far', () => {
  const whole = 2.025 - dischargeCellV(0.5, discharge(0.05, 25, 1));
  expect((2.025 - dischargeCellV(0.5, discharge(0.05, 25, 0.5))) / whole).toBeCloseTo(0.5, 9);
});
