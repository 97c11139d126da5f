import { SiteError } from './site-problem.js';

/**
 * Runs a stage on values that came from the site file: what the stage finds out of range is reported as a problem of
 * that part of the file.
 *
 * @throws SiteError instead of the stage's RangeError or TypeError
 */
export function fromSite<Result>(siteFile: string, path: string, make: () => Result): Result {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError || error instanceof TypeError) {
      throw new SiteError(siteFile, [{ line: 0, column: 0, path, message: error.message }]);
    }
    throw error;
  }
}
