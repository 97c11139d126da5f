import { workerData } from 'piscina';
import type { YearFigures } from '../year-figures.js';
import { createYearRunner, type OutlookTask } from './years.js';

const runYear = createYearRunner(workerData as OutlookTask);

/** Runs one year of the task that the worker was made for. */
export default function outlookYear(yearIndex: number): YearFigures {
  return runYear(yearIndex);
}
