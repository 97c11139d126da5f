import { deserialize } from 'node:v8';
import { parentPort } from 'node:worker_threads';
import { PreparedCache } from '@wintergap/year';
import { createDesignRunner, type DesignRunner, type DesignRunnerStart } from './design-runner.js';
import type { DesignAnswer, DesignTask } from './design-threads.js';
import { takeYear } from './years-left.js';

/** Of the run at hand; the weather that was read and the years made are kept for the next, which often has the same ones. */
let current: { run: number; runner: DesignRunner } | null = null;
const prepared = new PreparedCache();

function runnerOf({ run, start }: DesignTask): DesignRunner {
  if (current?.run !== run) {
    const { sites, asked } = deserialize(new Uint8Array(start)) as DesignRunnerStart;
    current = { run, runner: createDesignRunner({ sites, asked }, prepared) };
  }
  return current.runner;
}

const answer = (of: DesignAnswer): void => parentPort!.postMessage(of);

/** Runs all designs of a run under one weather year after another, as long as there are years that nobody has begun. */
parentPort!.on('message', (task: DesignTask) => {
  const { run, left } = task;
  try {
    const runner = runnerOf(task);
    for (let year = takeYear(left); year !== null; year = takeYear(left)) {
      answer({ run, year, figures: runner.run(year) });
    }
  } catch {
    // What is wrong is found again by the thread that asked: it runs the years that are missing in the end.
  }
  answer({ run, ended: true });
});
