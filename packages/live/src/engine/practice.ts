import type { Change } from '../design/change.js';

/** Between what somebody asked and the next year of practice, ms. */
const restMs = 300;

/**
 * Runs designs one by one while nothing is asked: an engine that has just been loaded takes several times as long for its
 * first years, and these are better not the reader's.
 *
 * @param lastAsked time of the latest question, ms
 * @param run runs the year of a design and keeps nothing of it
 */
export async function practise(
  changes: readonly Change[],
  lastAsked: () => number,
  run: (change: Change) => void,
): Promise<void> {
  for (const change of changes) {
    do await rest(Math.max(0, lastAsked() + restMs - performance.now()));
    while (performance.now() < lastAsked() + restMs);
    try {
      run(change);
    } catch {
      // A design that cannot be run was practice too.
    }
  }
}

const rest = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });
