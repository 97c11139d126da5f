import { OutOfRangeError } from '@wintergap/ground';
import { type Site, siteError } from './document/origin.js';
import { joinedPath } from './document/site-problem.js';

/**
 * Makes something of values of a design: what is found out of range there is a problem of that part of the site file.
 * Any other error is a fault of the program and passes through.
 *
 * @param path keys that lead to the values; what is found out of range may know the last ones itself
 * @throws SiteError instead of an OutOfRangeError
 */
export function fromSite<Result>(site: Site, path: string, make: () => Result): Result {
  try {
    return make();
  } catch (error) {
    if (error instanceof OutOfRangeError) throw siteError(site, joinedPath(path, error.key ?? ''), error.message);
    throw error;
  }
}
