import { SingleBar } from 'cli-progress';

/** What is done sooner needs no bar: half a second on a terminal, ten elsewhere. */
const quietMs = () => (process.stderr.isTTY ? 500 : 10_000);

/** How far a command has come, on stderr; a line every ten seconds where it is no terminal. */
export interface Progress {
  /** The total may change while the command finds out how much there is to do. */
  reached(done: number, total: number): void;
  stop(): void;
}

/** @param things what is counted, such as `years` */
export function countProgress(things: string): Progress {
  const bar = barOf(`{value} of {total} ${things}`);
  const began = performance.now();
  let known = 0;
  return {
    reached(done, total) {
      if (known === 0 && performance.now() - began < quietMs()) return;
      if (known === 0) bar.start(total, done);
      else {
        if (total !== known) bar.setTotal(total);
        bar.update(done);
      }
      known = total;
    },
    stop: () => known > 0 && bar.stop(),
  };
}

/** Designs with their rate and the time left, from those that are there already. */
export function sweepProgress(total: number, alreadyDone: number): { add(designs: number): void; stop(): void } {
  const bar = barOf('{value} of {total} designs, {rate}/s, {left} left');
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

const barOf = (format: string) =>
  new SingleBar({
    format: `[{bar}] ${format}`,
    stream: process.stderr,
    clearOnComplete: true,
    noTTYOutput: true,
    notTTYSchedule: 10_000,
  });

const rateText = (perSecond: number) => (perSecond < 10 ? perSecond.toFixed(1) : perSecond.toFixed(0));

/** `12 s`, `5 min`, `3 h 20 min`. */
function timeText(seconds: number): string {
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  const minutes = Math.ceil(seconds / 60);
  return minutes < 90 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}
