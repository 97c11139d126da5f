import { InputFileError, readInputText } from '@wintergap/ground';
import { SiteError } from './document/site-problem.js';

/**
 * The text of a site file. Stands by itself: that a file is not there is told before all that reads site files is loaded.
 *
 * @throws SiteError when it is not there, or no text
 */
export function readSiteText(file: string): string {
  try {
    return readInputText(file, 'refused');
  } catch (error) {
    if (!(error instanceof InputFileError)) throw error;
    const reason = error.code === 'ENOENT' ? 'no such file' : error.message;
    const line = error.line > 1 ? error.line : 0;
    throw new SiteError(file, [
      { line, column: Math.min(line, 1), path: '', message: `${reason}; expected a site file in YAML` },
    ]);
  }
}
