import { locate, SiteError, type SiteFile } from '@wintergap/site';

/** A problem of the site file at a path that begins with the section's name, with its line and column. */
export function sectionError({ file, document }: SiteFile, path: readonly string[], message: string): SiteError {
  return new SiteError(file, [{ ...locate(document, path), path: path.join('.'), message }]);
}
