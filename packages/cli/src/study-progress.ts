import { SingleBar } from 'cli-progress';

/** How far a study has come, on stderr; a line every ten seconds where it is no terminal. */
export interface StudyProgress {
  reached(done: number, total: number): void;
  stop(): void;
}

/** @param things what is counted, such as `years` */
export function studyProgress(things: string): StudyProgress {
  const bar = new SingleBar({
    format: `[{bar}] {value} of {total} ${things}`,
    stream: process.stderr,
    clearOnComplete: true,
    noTTYOutput: true,
    notTTYSchedule: 10_000,
  });
  let started = false;
  return {
    reached(done, total) {
      if (started) bar.update(done);
      else bar.start(total, done);
      started = true;
    },
    stop: () => {
      if (started) bar.stop();
    },
  };
}
