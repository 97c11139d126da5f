import { mustLie } from '@wintergap/ground';
import { checkSeries } from '../check-input.js';

/** Size of a store by the sequent-peak method. Amounts are in the unit of the series given. */
export type SequentPeak =
  | {
      closes: true;
      /** Smallest content range that carries the demand through every step. */
      storeSize: number;
      /** Last step after which the store must still be full, and the first after which it may be empty. */
      fullAfter: number;
      emptyAfter: number;
    }
  | {
      closes: false;
      /** Demand of one round that supply, and losses, leave open however large the store. */
      shortBy: number;
    };

/**
 * Smallest lossless store that lets a repeating supply meet a repeating demand.
 *
 * K_t = max(0, K_{t-1} + demand_t - supply_t), twice round; the store is the largest K of the second round.
 * Supply and demand of one step offset each other before the store is asked.
 *
 * Source: Rippl 1883 (mass curve), in the tabular form of Thomas and Burden 1963.
 *
 * @param supply amounts that could be stored in each step, as they arrive in the store
 * @param demand amounts to be drawn in each step, as they leave the store; same length and unit
 */
export function sequentPeak(supply: ArrayLike<number>, demand: ArrayLike<number>): SequentPeak {
  checkSeries('supply', supply, 'demand', demand);
  const steps = supply.length;
  const shortBy = netShort(supply, demand);
  if (shortBy > 0) return { closes: false, shortBy };
  let deficit = 0;
  let start = 0;
  let fullAfter = steps - 1;
  let emptyAfter = steps - 1;
  let storeSize = 0;
  for (let step = 0; step < 2 * steps; step++) {
    const t = step % steps;
    deficit += demand[t]! - supply[t]!;
    if (deficit <= 0) {
      deficit = 0;
      start = t;
    } else if (deficit > storeSize) {
      storeSize = deficit;
      fullAfter = start;
      emptyAfter = t;
    }
  }
  return { closes: true, storeSize, fullAfter, emptyAfter };
}

/**
 * The sequent-peak size when the store also loses a share of what it holds in every step.
 *
 * Taken backwards, twice round: R_{t-1} = max(0, R_t + demand_t - supply_t) / (1 - loss), where R_t is the least
 * content after step t that carries all later demand. The store is the largest R. Without loss this is `sequentPeak`.
 * The store covers the year when R comes back to zero somewhere in the second round; otherwise it grows without end.
 *
 * @param lossPerStep share of the content lost in a step, 0 up to but not including 1
 */
export function sequentPeakWithLoss(
  supply: ArrayLike<number>,
  demand: ArrayLike<number>,
  lossPerStep: number,
): SequentPeak {
  checkSeries('supply', supply, 'demand', demand);
  mustLie('lossPerStep', lossPerStep, 0, 1 - Number.EPSILON);
  const steps = supply.length;
  const kept = 1 - lossPerStep;
  const shortBy = netShort(supply, demand);
  if (shortBy > 0) return { closes: false, shortBy };
  let needed = 0;
  let emptyLater = steps - 1;
  let fullAfter = steps - 1;
  let emptyAfter = steps - 1;
  let storeSize = 0;
  let touchesZero = false;
  for (let step = 2 * steps - 1; step >= 0; step--) {
    const t = step % steps;
    const before = needed + demand[t]! - supply[t]!;
    if (before > 0) {
      needed = before / kept;
    } else {
      needed = 0;
      emptyLater = (t + steps - 1) % steps;
      if (step < steps) touchesZero = true;
    }
    if (needed > storeSize) {
      storeSize = needed;
      fullAfter = (t + steps - 1) % steps;
      emptyAfter = emptyLater;
    }
  }
  // Without loss the totals have already decided; rounding may keep the last zero from being seen.
  if (lossPerStep > 0 && !touchesZero) return { closes: false, shortBy: leftOpen(supply, demand, kept) };
  return { closes: true, storeSize, fullAfter, emptyAfter };
}

/**
 * Demand of one round left open by a store without limit. Only where the year is not covered: such a store runs
 * empty within a round, so the second round is the settled one.
 */
function leftOpen(supply: ArrayLike<number>, demand: ArrayLike<number>, kept: number): number {
  const steps = supply.length;
  let content = 0;
  let open = 0;
  for (let step = 0; step < 2 * steps; step++) {
    const t = step % steps;
    content = content * kept + supply[t]! - demand[t]!;
    if (content < 0) {
      if (step >= steps) open -= content;
      content = 0;
    }
  }
  return open;
}

// Share of the demand below which a difference of the two totals is rounding.
const rounding = 1e-12;

/** Demand less supply over one round, 0 when supply covers it. */
function netShort(supply: ArrayLike<number>, demand: ArrayLike<number>): number {
  let supplied = 0;
  let demanded = 0;
  for (let t = 0; t < supply.length; t++) {
    supplied += supply[t]!;
    demanded += demand[t]!;
  }
  return demanded - supplied > rounding * demanded ? demanded - supplied : 0;
}
