import { SingleBar } from 'cli-progress';

/** How far a sweep has come, on stderr: designs, rate and time left; a line every ten seconds where it is no terminal. */
export interface SweepProgress {
  add(designs: number): void;
  stop(): void;
}

export function sweepProgress(total: number, alreadyDone: number): SweepProgress {
  const bar = new SingleBar({
    format: '[{bar}] {value} of {total} designs, {rate}/s, {left} left',
    stream: process.stderr,
    clearOnComplete: true,
    noTTYOutput: true,
    notTTYSchedule: 10_000,
  });
  const start = performance.now();
  let done = alreadyDone;
  bar.start(total, done, { rate: '-', left: '-' });
  return {
    add(designs) {
      done += designs;
      const perSecond = (done - alreadyDone) / ((performance.now() - start) / 1000);
      bar.update(done, { rate: rateText(perSecond), left: timeText((total - done) / perSecond) });
    },
    stop: () => bar.stop(),
  };
}

const rateText = (perSecond: number) => (perSecond < 10 ? perSecond.toFixed(1) : perSecond.toFixed(0));

/** `12 s`, `5 min`, `3 h 20 min`. */
function timeText(seconds: number): string {
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  const minutes = Math.ceil(seconds / 60);
  return minutes < 90 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
