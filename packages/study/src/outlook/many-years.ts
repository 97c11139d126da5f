import { mustBeWhole } from '@wintergap/ground';
import { threadMemory } from '../thread-memory.js';
import type { YearFigures } from '../year-figures.js';
import { createYearRunner, type OutlookTask } from './years.js';

export interface ManyYearsSettings {
  /** Threads; 1 runs in this one. The result is the same for any number. */
  workers?: number;
  /** Called after each year. */
  onYear?: (done: number, total: number) => void;
}

/**
 * The figures of every year of a task, in the order of the years.
 *
 * @throws SiteError or WeatherError for input that cannot be used, OutOfRangeError for numbers out of range
 */
export async function manyYears(task: OutlookTask, settings: ManyYearsSettings = {}): Promise<YearFigures[]> {
  const { workers = 1, onYear } = settings;
  const total = task.weather.years;
  mustBeWhole('years', total, 1, 10_000);
  mustBeWhole('workers', workers, 1, 256);
  // The first year is always run here: wrong input then fails with its own error, not with a copy from a thread.
  const runYear = createYearRunner(task);
  const years = [runYear(0)];
  onYear?.(1, total);
  if (workers === 1 || total === 1) {
    for (let year = 1; year < total; year++) {
      years.push(runYear(year));
      onYear?.(year + 1, total);
    }
    return years;
  }
  const { Piscina } = await import('piscina');
  const pool = new Piscina<number, YearFigures>({
    filename: new URL('./outlook-worker.js', import.meta.url).href,
    minThreads: Math.min(workers, total - 1),
    maxThreads: Math.min(workers, total - 1),
    workerData: task,
    resourceLimits: threadMemory,
  });
  try {
    let done = 1;
    const rest = Array.from({ length: total - 1 }, async (_, i) => {
      const figures = await pool.run(i + 1);
      done++;
      onYear?.(done, total);
      return figures;
    });
    return years.concat(await Promise.all(rest));
  } finally {
    await pool.destroy();
  }
}
