import { deserialize } from 'node:v8';
import { PreparedCache } from '@wintergap/year';
import type { YearFigures } from '../year-figures.js';
import { createDesignRunner, type DesignRunner, type DesignRunnerStart } from './design-runner.js';
import type { DesignTask } from './design-threads.js';

/** Of the run at hand; what it prepared is kept for the next, which often has the same place and years. */
let current: { run: number; runner: DesignRunner } | null = null;
const prepared = new PreparedCache();

/** Runs all designs of a run under one weather year. */
export default function designsOfYear({ run, start, yearIndex }: DesignTask): YearFigures[] {
  if (current?.run !== run) {
    const { sites, asked } = deserialize(new Uint8Array(start)) as DesignRunnerStart;
    current = { run, runner: createDesignRunner({ sites, asked }, prepared) };
  }
  return current.runner.run(yearIndex);
}
