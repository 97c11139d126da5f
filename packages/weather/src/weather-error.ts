/** A weather file that cannot be used, with the place in the file that says why. */
export class WeatherError extends Error {
  override readonly name = 'WeatherError';
  readonly file: string;
  /** Line of the file, from 1. */
  readonly line: number;

  constructor(file: string, line: number, message: string) {
    super(`${file} line ${line}: ${message}`);
    this.file = file;
    this.line = line;
  }
}
