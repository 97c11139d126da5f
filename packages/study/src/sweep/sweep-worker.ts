import { workerData } from 'piscina';
import { createSweepRunner, type SweepStart } from './design.js';
import type { SweepRow } from './row.js';

const run = createSweepRunner(workerData as SweepStart);

/** Runs the designs of the given numbers. Each worker keeps what it prepared for the designs it has run. */
export default function runDesigns(numbers: readonly number[]): SweepRow[] {
  return numbers.map(run);
}
