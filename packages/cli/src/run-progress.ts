import { SingleBar } from 'cli-progress';

/** How many years have been run, on stderr and only where it is a terminal. */
export interface RunProgress {
  onRun(done: number, of: number): void;
  stop(): void;
}

export function runProgress(): RunProgress {
  const bar = new SingleBar({
    format: '[{bar}] {value} of {total} years',
    stream: process.stderr,
    clearOnComplete: true,
  });
  let total = 0;
  return {
    onRun(done, of) {
      // The number of years is only known for certain after the first.
      if (of !== total) bar.start(of, done);
      else bar.update(done);
      total = of;
    },
    stop: () => bar.stop(),
  };
}
