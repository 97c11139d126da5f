import { serialize } from 'node:v8';
import type { Piscina } from 'piscina';
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
const pools = new Map<number, Promise<Pool>>();
let runs = 0;

type Pool = Piscina<DesignTask, YearFigures[]>;

/**
 * Runs years of designs on other threads.
 *
 * @param most threads that work at the same time
 */
export function designThreads(start: DesignRunnerStart, most: number): (yearIndex: number) => Promise<YearFigures[]> {
  const pool = poolOf(most);
  const run = ++runs;
  const written = sharedCopy(start);
  return async (yearIndex) => (await pool).run({ run, start: written, yearIndex });
}

function poolOf(most: number): Promise<Pool> {
  const known = pools.get(most) ?? startPool(most);
  pools.set(most, known);
  return known;
}

/** The library of threads is loaded when threads are wanted: most runs do without. */
async function startPool(most: number): Promise<Pool> {
  const { Piscina } = await import('piscina');
  return new Piscina<DesignTask, YearFigures[]>({
    filename: new URL('./design-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: most,
    idleTimeout: Number.POSITIVE_INFINITY,
  });
}

function sharedCopy(start: DesignRunnerStart): SharedArrayBuffer {
  const bytes = serialize(start);
  const copy = new SharedArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}
