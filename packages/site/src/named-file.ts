import { pathOfFile } from './schema/fields.js';

/** A file that a site names: as written, for messages and fingerprints, and where it is. */
export interface NamedFile {
  written: string;
  /** What to open. Relative only in a design that came from no file: it then counts from the working folder. */
  path: string;
  /** Which of the years in the file, where it holds several. */
  calendarYear?: number;
}

/** The field of the site file that names another file; where a relative path counts from is said by who reads the site file. */
export const fileName = pathOfFile.transform((written): NamedFile => ({ written, path: written }));
