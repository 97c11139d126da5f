import { SiteError } from '@wintergap/site';
import { WeatherError } from '@wintergap/weather';
import { exitCodes } from './exit-codes.js';
import { InputError } from './input-error.js';

/** Says on stderr what went wrong, without a stack for wrong input, and returns the exit code. */
export function reportFailure(error: unknown): number {
  if (error instanceof SiteError || error instanceof WeatherError || error instanceof InputError) {
    process.stderr.write(`${error.message}\n`);
    return exitCodes.wrongInput;
  }
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`wintergap has a fault; please report this text with your site file:\n${text}\n`);
  return exitCodes.fault;
}
