import { SiteError } from '@wintergap/site';
import { RejectedWeatherError, WeatherError } from '@wintergap/weather';
import { exitCodes } from './exit-codes.js';
import { InputError } from './input-error.js';
import { printError } from './print.js';

/** Says on stderr what went wrong, without a stack for wrong input, and returns the exit code. */
export function reportFailure(error: unknown): number {
  if (error instanceof SiteError || error instanceof WeatherError || error instanceof InputError) {
    printError(`${error.message}\n`);
    return exitCodes.wrongInput;
  }
  if (error instanceof RejectedWeatherError) {
    printError(
      `${error.message}\nMend the weather ('wintergap weather FILE' says more), or go on all the same with --accept-weather.\n`,
    );
    return exitCodes.wrongInput;
  }
  const text = error instanceof Error ? (error.stack ?? error.message) : String(error);
  printError(`wintergap has a fault; please report this text with your site file:\n${text}\n`);
  return exitCodes.fault;
}
