import { setImmediate } from 'node:timers/promises';
import { designsInBlock } from '../design/grid.js';
import { threadMemory } from '../thread-memory.js';
import { createSweepRunner, type SweepStart } from './design.js';
import { plannedNumber, type SweepPlan } from './plan.js';
import type { SweepRow } from './row.js';

/** Most designs handed to a worker at once. */
const mostAtOnce = 64;
/** Batches handed out before the oldest one is back, for each worker. */
const batchesAhead = 3;

/**
 * Runs the designs of a plan, from position `from` on, and hands them over in the order of the plan, some at a time.
 *
 * One worker is the calling thread itself; more are threads of their own, each with its own prepared parts. What is handed
 * over does not depend on their number. At most some hundred designs per worker are held at any moment.
 */
export async function runSweep(
  plan: SweepPlan,
  from: number,
  workers: number,
  take: (rows: readonly SweepRow[]) => void,
): Promise<void> {
  const { site, axes, columns, positions } = plan;
  const start: SweepStart = { site, axes, columns };
  const left = positions.to - from;
  if (left <= 0) return;
  const threads = Math.min(workers, left);
  const atOnce = batchSize(plan, left, threads);
  if (threads <= 1) {
    const run = createSweepRunner(start);
    for (let at = from; at < positions.to; at += atOnce) {
      take(numbersFrom(plan, at, atOnce).map(run));
      await setImmediate();
    }
    return;
  }
  const { Piscina } = await import('piscina');
  const pool = new Piscina<readonly number[], SweepRow[]>({
    filename: new URL('./sweep-worker.js', import.meta.url).href,
    minThreads: threads,
    maxThreads: threads,
    workerData: start,
    resourceLimits: threadMemory,
  });
  try {
    const underway: Promise<SweepRow[]>[] = [];
    for (let at = from; at < positions.to || underway.length > 0; ) {
      while (at < positions.to && underway.length < threads * batchesAhead) {
        const batch = pool.run(numbersFrom(plan, at, atOnce));
        // A failure is met when its turn comes; until then it must not count as unhandled.
        batch.catch(() => {});
        underway.push(batch);
        at += atOnce;
      }
      take(await underway.shift()!);
    }
  } finally {
    await pool.destroy();
  }
}

function numbersFrom(plan: SweepPlan, at: number, atOnce: number): number[] {
  const length = Math.min(atOnce, plan.positions.to - at);
  return Array.from({ length }, (_, i) => plannedNumber(plan, at + i));
}

/**
 * How many designs go to a worker at once: whole blocks of designs that share what is prepared where there are blocks enough
 * to keep all workers busy, otherwise an even share.
 */
function batchSize({ axes, order }: SweepPlan, left: number, threads: number): number {
  const even = Math.min(mostAtOnce, Math.max(1, Math.ceil(left / (threads * 8))));
  const block = order.sample === null ? designsInBlock(axes) : 1;
  if (block <= even) return even - (even % block);
  return block <= mostAtOnce && left / block >= 2 * threads ? block : even;
}
