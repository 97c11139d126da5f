import { InputFileError, readInputText } from '@wintergap/ground';
import { LoadTableError, type MeasuredLoad, readLoadTable } from '@wintergap/loads';
import { firstWeekday, type Site, siteError } from '@wintergap/site';
import type { PreparedCache } from './prepared-cache.js';

/**
 * The measured load that a site names, read from its file; `null` where it names none. The same object every time while
 * `prepared` keeps it.
 *
 * @throws SiteError when the file is not a table of loads
 */
export function measuredLoadOf(site: Site, prepared: PreparedCache): MeasuredLoad | null {
  const { measuredLoad } = site;
  if (!measuredLoad) return null;
  const weekday = firstWeekday(site);
  return prepared.lasting('measured load', [measuredLoad, weekday], () => readMeasured(site, measuredLoad, weekday));
}

function readMeasured(site: Site, { file, yearly }: NonNullable<Site['measuredLoad']>, weekday: number): MeasuredLoad {
  let text: string;
  try {
    text = readInputText(file.path, 'latin1');
  } catch (error) {
    if (!(error instanceof InputFileError)) throw error;
    throw siteError(site, 'measuredLoad.file', `${file.written} ${error.message}; expected a table of loads`);
  }
  try {
    return readLoadTable(text, {
      source: file.written,
      firstWeekday: weekday,
      ...(yearly !== undefined && { scaleToKWh: yearly / 1000 }),
    });
  } catch (error) {
    if (error instanceof LoadTableError) throw siteError(site, 'measuredLoad.file', error.message);
    throw error;
  }
}
