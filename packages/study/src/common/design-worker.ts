import { workerData } from 'piscina';
import type { YearFigures } from '../year-figures.js';
import { createDesignRunner } from './design-runner.js';
import type { DesignRunnerStart } from './run-designs.js';

const runYear = createDesignRunner(workerData as DesignRunnerStart);

/** Runs all designs under one weather year. */
export default function designsOfYear(yearIndex: number): YearFigures[] {
  return runYear(yearIndex);
}
