import type { BareYear } from '../year-result.js';

/** States of charge within the loop's steps are told apart by more than this. */
const sameCharge = 1e-6;

/** Why the engine was started in an hour in which it was: the rules of the site file in the order in which they decide. */
export function startReason({ plant, ledger }: Pick<BareYear, 'plant' | 'ledger'>, hour: number): string {
  const { generator } = plant;
  if (!generator) return '';
  const startBelow = generator.startBelow[hour]!;
  if (ledger.lowestStateOfCharge[hour]! <= startBelow + sameCharge)
    return `the charge was down to ${Math.round(startBelow * 100)} %`;
  if (generator.exerciseAt[hour] === 1) return 'an exercise run was due';
  const { fullEveryDays, startBelowV } = generator;
  const day = Math.floor(hour / 24);
  const sinceFull = ledger.daysSinceFull[Math.max(0, day * 24 - 1)]!;
  if (fullEveryDays > 0 && sinceFull >= fullEveryDays - 1) return `the bank was not full for ${fullEveryDays} days`;
  if (startBelowV > 0) return `the bank was below ${startBelowV} V, or could not carry the load`;
  return 'sun and bank could not carry the load';
}
