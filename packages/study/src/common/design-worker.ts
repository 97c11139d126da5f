import { workerData } from 'piscina';
import type { YearFigures } from '../year-figures.js';
import { createDesignRunner, type DesignRunnerStart } from './design-runner.js';

const { run } = createDesignRunner(workerData as DesignRunnerStart);

/** Runs all designs under one weather year. */
export default function designsOfYear(yearIndex: number): YearFigures[] {
  return run(yearIndex);
}
