import type { SiteFile } from '@wintergap/site';
import type { AcceptWeather } from '../options/accept-weather.js';

/**
 * Reads the site file of a command. Only what reads site files is loaded for it, and the rooms that run years after it:
 * a slip in the file is told at once, and before either that there is no such file.
 *
 * @throws SiteError with every problem found
 */
export async function openSite(file: string, options: AcceptWeather): Promise<SiteFile> {
  const { siteText } = await import('./site-text.js');
  const text = siteText(file);
  const { loadAccepting } = await import('./load-accepting.js');
  return loadAccepting(file, options, text);
}
