import { bankFacts, simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { honeyHouse } from './honey-house.js';

const cabinet = /^ {2}cabinet: .*$/m;
const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** The honey house with its bank on the floor, and other rooms. */
function bareBank(stands: string | null, rooms: string | null) {
  const { base } = honeyHouse((text) =>
    text
      .replace(/^ {2}more foam: .*$/m, '')
      .replace(cabinet, stands === null ? '' : `  stands: ${stands}`)
      .concat(rooms === null ? '' : `\nrooms: ${rooms}`),
  );
  return simulateSite(base);
}

test('a bank in the rooms is as warm as the rooms are, and ages so', () => {
  const usual = bareBank(null, null);
  const hot = bareBank(null, '{ atLeast: 18 degC, above: 30 K }');
  const roomC = (above: number) => mean(usual.weather.airC.map((airC) => Math.max(airC + above, 18)));
  // What the bank's own losses add is small against 12 W/K.
  expect(mean(usual.ledger.bankC)).toBeGreaterThan(roomC(3));
  expect(mean(usual.ledger.bankC)).toBeLessThan(roomC(3) + 2);
  expect(mean(hot.ledger.bankC)).toBeGreaterThan(roomC(30));
  expect(mean(hot.ledger.bankC)).toBeLessThan(roomC(30) + 2);
  expect(bankFacts(hot).wear.yearsTo80).toBeLessThan(0.75 * bankFacts(usual).wear.yearsTo80);
});

test('a bank without a cabinet may stand where nobody heats', () => {
  const heated = bareBank('rooms', null);
  const unheated = bareBank('unheated', null);
  const outdoors = bareBank('outdoors', null);
  expect(mean(unheated.ledger.bankC) - mean(outdoors.ledger.bankC)).toBeCloseTo(3, 0);
  expect(heated.summary.bank.minTemp).toBeGreaterThan(17.9);
  expect(unheated.summary.bank.minTemp).toBeLessThan(-15);
});

test('a cabinet indoors is warmer than one in the open', () => {
  const { base } = honeyHouse((text) => text.replace(cabinet, (line) => `${line}\n  stands: rooms`));
  expect(simulateSite(base).summary.bank.minTemp).toBeGreaterThan(17.9);
});
