import { exitCodes } from './exit-codes.js';
import { printError } from './output/print.js';

/** What says all that the user needs to know. Told by name: the rooms are not loaded only to ask whose error it is. */
const wrongInput: readonly string[] = ['SiteError', 'WeatherError', 'InputError'];

/** Says on stderr what went wrong, without a stack for wrong input, and returns the exit code. */
export function reportFailure(error: unknown): number {
  const name = error instanceof Error ? error.name : '';
  const message = error instanceof Error ? error.message : String(error);
  if (wrongInput.includes(name)) {
    printError(`${message}\n`);
    return exitCodes.wrongInput;
  }
  if (name === 'RejectedWeatherError') {
    printError(
      `${message}\nMend the weather ('wintergap weather FILE' says more), or go on all the same with --accept-weather.\n`,
    );
    return exitCodes.wrongInput;
  }
  const text = error instanceof Error ? (error.stack ?? message) : message;
  printError(`wintergap has a fault; please report this text with your site file:\n${text}\n`);
  return exitCodes.fault;
}
