import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';

/** What the figures were measured on, and what else ran on it: a load of 0 before the bench is a quiet machine. */
export function machine() {
  const [before] = loadavg();
  return [
    `- processor: ${cpus()[0]?.model.trim() ?? 'unknown'}, ${availableParallelism()} at hand`,
    `- memory: ${(totalmem() / 2 ** 30).toFixed(0)} GB`,
    `- Node.js ${process.version}, ${process.platform} ${process.arch}`,
    `- load average of the minute before: ${before.toFixed(1)}`,
  ];
}
