import { serialize } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { threadMemory } from '../thread-memory.js';
import type { YearFigures } from '../year-figures.js';
import type { DesignRunnerStart } from './design-runner.js';
import { createYearsLeft, leaveYears, takeYear, type YearsLeft } from './years-left.js';

/** A run, as a thread is set to work on it. */
export interface DesignTask {
  /** Tells the runs of this process apart. */
  run: number;
  /** The run's `DesignRunnerStart`, written once into memory that all threads read. */
  start: SharedArrayBuffer;
  left: YearsLeft;
}

/** What a thread has done: what each design does in a year, or that it found no more to do. */
export type DesignAnswer = { run: number; year: number; figures: YearFigures[] } | { run: number; ended: true };

/** Years of designs that other threads run, beside the one that asks for them. */
export interface DesignThreads {
  /** Sets the threads to work on the years before `count`. */
  reach(count: number): void;
  /** A year for this thread to run; `null` when all are begun. */
  take(): number | null;
  /** Resolves when the threads are done. A thread that fails leaves its year undone. */
  ended(): Promise<void>;
  /** Lets the threads go when the year at hand is done. */
  stop(): void;
}

/** A thread and who waits for it. */
interface Thread {
  worker: Worker;
  isGone: boolean;
  /** By run: takes a year in, and hears that the thread has ended its part or itself. */
  listeners: Map<number, { onYear: (year: number, figures: YearFigures[]) => void; onEnd: () => void }>;
}

/**
 * The threads of this process: started when first needed and kept for the runs that follow, since a thread costs more to
 * start than a year of five designs. They do not keep the process alive while nobody waits for them. A library's pool hands
 * work out as this thread comes round to it, and this thread is busy with years of its own: a thread here takes its next
 * year by itself.
 */
const threads: Thread[] = [];
let runs = 0;

/**
 * Runs years of designs on other threads.
 *
 * @param most threads that work at the same time
 * @param from the first year that they are to run
 * @param onYear called with what each design does in a year, as years are done and this thread listens
 */
export function designThreads(
  start: DesignRunnerStart,
  most: number,
  from: number,
  onYear: (year: number, figures: YearFigures[]) => void,
): DesignThreads {
  while (threads.length < most) threads.push(startThread());
  const mine = threads.slice(0, most);
  const left = createYearsLeft(from);
  const task: DesignTask = { run: ++runs, start: sharedCopy(start), left };
  let working: Promise<void>[] = [];
  let reached = from;
  return {
    reach(count) {
      if (count <= reached) return;
      reached = count;
      leaveYears(left, count);
      working = working.concat(mine.map((thread) => setToWork(thread, task, onYear)));
    },
    take: () => takeYear(left),
    async ended() {
      for (const { worker } of mine) worker.ref();
      await Promise.all(working);
      for (const { worker } of mine) worker.unref();
      working = [];
    },
    stop: () => leaveYears(left, 0),
  };
}

function setToWork(
  { worker, isGone, listeners }: Thread,
  task: DesignTask,
  onYear: (year: number, figures: YearFigures[]) => void,
): Promise<void> {
  return new Promise((resolve) => {
    const onEnd = () => {
      listeners.delete(task.run);
      resolve();
    };
    listeners.set(task.run, { onYear, onEnd });
    if (isGone) onEnd();
    else worker.postMessage(task);
  });
}

function startThread(): Thread {
  const worker = new Worker(new URL('./design-worker.js', import.meta.url), { resourceLimits: threadMemory });
  const thread: Thread = { worker, isGone: false, listeners: new Map() };
  worker.on('message', (answer: DesignAnswer) => {
    const listener = thread.listeners.get(answer.run);
    if ('ended' in answer) listener?.onEnd();
    else listener?.onYear(answer.year, answer.figures);
  });
  const gone = () => {
    thread.isGone = true;
    const at = threads.indexOf(thread);
    if (at >= 0) threads.splice(at, 1);
    for (const { onEnd } of [...thread.listeners.values()]) onEnd();
  };
  worker.on('error', gone);
  worker.on('exit', gone);
  worker.unref();
  return thread;
}

function sharedCopy(start: DesignRunnerStart): SharedArrayBuffer {
  const bytes = serialize(start);
  const copy = new SharedArrayBuffer(bytes.length);
  new Uint8Array(copy).set(bytes);
  return copy;
}
