/** A sweep's file that cannot be read, continued, joined or written. The message names the file and what to do. */
export class SweepFileError extends Error {
  override readonly name = 'SweepFileError';
}
