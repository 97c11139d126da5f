import { serialize } from 'node:v8';
import { Piscina } from 'piscina';
import type { YearFigures } from '../year-figures.js';
import type { DesignRunnerStart } from './design-runner.js';

/** One year of a run, as a thread is asked for it. */
export interface DesignTask {
  /** Tells the runs of this process apart. */
  run: number;
  /** The run's `DesignRunnerStart`, written once into memory that all threads read. */
  start: SharedArrayBuffer;
  yearIndex: number;
}

/**
 * The threads of this process: started when first needed and kept for the runs that follow, since a thread costs more to
 * start than a year of five designs. They do not keep the process alive.
 */
const pools = new Map<number, Piscina<DesignTask, YearFigures[]>>();
let runs = 0;

/**
 * Runs years of designs on other threads.
 *
 * @param most threads that work at the same time
 */
export function designThreads(start: DesignRunnerStart, most: number): (yearIndex: number) => Promise<YearFigures[]> {
  const pool = poolOf(most);
  const run = ++runs;
  const written = sharedCopy(start);
  return (yearIndex) => pool.run({ run, start: written, yearIndex });
}

function poolOf(most: number): Piscina<DesignTask, YearFigures[]> {
  const known = pools.get(most);
  if (known) return known;
  const pool = new Piscina<DesignTask, YearFigures[]>({
    filename: new URL('./design-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: most,
    idleTimeout: Number.POSITIVE_INFINITY,
  });
  pools.set(most, pool);
  return pool;
}

function sharedCopy(start: DesignRunnerStart): SharedArrayBuffer {
  const bytes = serialize(start);
  const copy = new SharedArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}
