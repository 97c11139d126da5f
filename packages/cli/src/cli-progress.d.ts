/** The part of cli-progress that is used here; the package has no types of its own. */
declare module 'cli-progress' {
  export class SingleBar {
    constructor(options: {
      format: string;
      stream?: NodeJS.WritableStream;
      hideCursor?: boolean;
      clearOnComplete?: boolean;
      noTTYOutput?: boolean;
      notTTYSchedule?: number;
    });
    start(total: number, value: number, payload?: Record<string, string>): void;
    setTotal(total: number): void;
    update(value: number, payload?: Record<string, string>): void;
    stop(): void;
  }
}
