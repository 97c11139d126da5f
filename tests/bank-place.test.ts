import { headline } from '@wintergap/report';
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

test('the caution on a bank too cold to charge names a heater that mends it', () => {
  const lithium = (more: string) =>
    simulateSite(
      honeyHouse((text) =>
        text
          .replace('flooded-lead-acid', 'lithium-iron-phosphate')
          .replace('voltage: 24 V', 'voltage: 25.6 V')
          .replace(cabinet, `  cabinet: { insulation: 1.2 W/K${more} }`)
          .replace(/^ {2}more foam: .*$/m, ''),
      ).base,
    );
  const cold = lithium('');
  const text = cold.summary.cautions.find(({ code }) => code === 'cold-charging')!.text;
  expect(headline(cold, 'metric')).toMatch(/full or too cold[\s\S]*kWh of it because the bank is\s+too cold/);
  const advised = text.match(/heatedBy: \{ [^}]* \}/)![0];
  const heated = lithium(`, ${advised}`);
  expect(cold.summary.generator.hours).toBeGreaterThan(1000);
  expect(heated.summary.generator.hours).toBeLessThan(100);
  expect(heated.summary.load.darkKWh).toBe(0);
  expect(heated.summary.cautions.map(({ code }) => code)).not.toContain('cold-charging');
  expect(headline(heated, 'metric')).not.toMatch(/too\s+cold/);
});
