import { CommanderError } from 'commander';
import { exitCodes } from './exit-codes.js';
import { reportFailure } from './failure.js';
import { printError } from './output/print.js';
import { createProgram } from './program.js';

// Whoever reads the output may stop reading, as `head` does: that is no fault, and the answer stays what it was.
process.stderr.on('error', () => process.exit());
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit();
  printError(`the results cannot be written to the standard output: ${error.message}\n`);
  process.exit(exitCodes.fault);
});

try {
  await createProgram().parseAsync();
} catch (error) {
  // Help and version end the program through commander as well, with exit code 0.
  process.exitCode =
    error instanceof CommanderError
      ? error.exitCode === 0
        ? exitCodes.done
        : exitCodes.wrongInput
      : reportFailure(error);
}
