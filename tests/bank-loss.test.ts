import { yearSum } from '@wintergap/tally';
import { simulateSite } from '@wintergap/year';
import { expect, test } from 'vitest';
import { honeyHouse } from './honey-house.js';

/**
 * A bank can lose no more in an hour than its own equations allow: the charge that is stored at no more than the set
 * voltage instead of the rest voltage, all of what gas takes at the set voltage, the charge given at no less than the
 * voltage under the hour's whole load. Self-discharge is 4 % a month of the charge held, doubling for each 10 K.
 */
test('in every hour the bank loses no more than overvoltage and gas allow, and stands down by its rate', () => {
  const { plant, ledger } = simulateSite(honeyHouse().base);
  const { bank } = plant;
  let allowed = 0;
  let worst = 0;
  let worstStanding = 0;
  for (let h = 1; h < 8760; h++) {
    const bankC = ledger.bankC[h - 1]!;
    const low = ledger.lowestStateOfCharge[h]!;
    const gasAh = ledger.gassingAh[h]!;
    const setV = bank.setVoltage(0, bankC);
    const restV = bank.restVoltage(low);
    const chargeAh = ledger.bankChargeWh[h]! / restV;
    const demandW = plant.inverterInputW[h]! + plant.converterInputW[h]! + plant.ownUseW[h]!;
    const amps = bank.dischargeAmps(demandW, low, bankC);
    const loadedV = bank.terminalVoltage(-amps, low, bankC);
    const highV = bank.restVoltage(Math.max(ledger.stateOfCharge[h - 1]!, ledger.stateOfCharge[h]!));
    const bound =
      Math.max(setV - restV, 0) * Math.max(chargeAh - gasAh, 0) +
      setV * gasAh +
      (highV - loadedV) * (ledger.bankDischargeWh[h]! / loadedV);
    allowed += bound;
    const loss = ledger.bankLossWh[h]!;
    worst = Math.max(worst, loss - bound, -loss);
    const held = ledger.stateOfCharge[h]!;
    const standingWh = (0.04 / 730) * 2 ** ((bankC - 25) / 10) * held * bank.refAh * bank.restVoltage(held);
    worstStanding = Math.max(worstStanding, Math.abs(ledger.selfDischargeWh[h]! / standingWh - 1));
  }
  // It uses three quarters of what is allowed, so that the bound says something.
  expect(worst).toBeLessThan(1e-6);
  expect(worstStanding).toBeLessThan(0.01);
  expect(yearSum(ledger.bankLossWh)).toBeGreaterThan(0.6 * allowed);
});
